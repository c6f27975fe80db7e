using Closemown.Estimation;

namespace Closemown.Bench.Workshop;

/// <summary>A cutting unit with physics of its own, not the estimator's: what it is now, and what turning, lapping and mowing do to it.</summary>
/// <remarks>Single blades press before the mean does; steel wears station by station; a lap's bite falls as it opens; dulling comes grain by grain. All invented.</remarks>
internal sealed class CuttingUnit
{
    private static readonly (double Left, double Right)[] Weights = [(0.9107, 0.0893), (0.5, 0.5), (0.0893, 0.9107)];
    private const double OpensPerUmHour = 0.4;
    private const double BluntsPerUmHour = 0.1;
    private const double GrainsPerHour = 8;
    private const double SlipShare = 1.0 / 200;
    private const double FreshUm = 3;
    private const double GrindUm = 160;                  // knife and reel together
    private readonly double[] end;
    private readonly double[] edge;
    private readonly double[] slack;
    private readonly RootWear? roots;                    // null where it wears evenly
    private readonly int[] turns = [0, 0];
    private double bow;
    private double runOut = 1;                           // share left of the blades' stand-out
    private int laps;
    private bool slackened;                              // the knife's screws, once
    private bool quiet;                                  // a copy to think with: no chance

    public CuttingUnit(UnitMake make, double hours)
    {
        (Make, Hours) = (make, hours);
        (end, edge, slack, bow) = ([.. make.Ends], [.. make.Edges], [.. make.SlackUm], make.Bow);
        roots = make.OtherWear ? new() : null;
    }

    private CuttingUnit(CuttingUnit other)
    {
        (Make, Hours, Outings, SteelUm, LapMinutes) = (other.Make, other.Hours, other.Outings, other.SteelUm, other.LapMinutes);
        (end, edge, slack, bow, runOut, laps, quiet, slackened, Spell) = ([.. other.end], [.. other.edge], [.. other.slack], other.bow, other.runOut, other.laps, other.quiet, other.slackened, other.Spell);
        other.turns.CopyTo(turns, 0);
        roots = other.roots?.Copy();
    }

    public UnitMake Make { get; }

    public double Hours { get; }

    /// <summary>Mowings so far.</summary>
    public int Outings { get; private set; }

    /// <summary>How often something was changed at the bench since it last mowed.</summary>
    public int Spell { get; private set; }

    /// <summary>Steel taken off knife and reel together, by laps, grinding and pressing.</summary>
    public double SteelUm { get; private set; }

    public double LapMinutes { get; private set; }

    /// <summary>Mean clearance of all blades at a station, bow included.</summary>
    public double Gap(int s) => (Weights[s].Left * end[0]) + (Weights[s].Right * end[1]) + (s == 1 ? bow : 0);

    public double Edge(int s) => edge[s];

    /// <summary>How hollow the middle stands to both ends.</summary>
    public double Bow => bow;

    /// <summary>How far a blade stands out now.</summary>
    public double StandsOut(int s, int blade) => runOut * Make.StandsOut[s][blade];

    public CuttingUnit Copy() => new(this);

    /// <summary>A copy on which everything goes as expected.</summary>
    public CuttingUnit Expected() => new(this) { quiet = true };

    /// <summary>Something is about to be changed: what is read after it is read afresh.</summary>
    public void BeginSpell() => Spell++;

    public void Turn(int side, double clicks)
    {
        if (clicks == 0) return;
        roots?.Turned(side);
        var move = clicks * Make.ClickUm[side];
        if (!quiet)
        {
            var r = Chance.Stream(Make.Seed, Chance.Of.Turning, Outings, side, turns[side]++);
            move += Chance.Normal(r, 0, Math.Sqrt(Math.Abs(clicks)));
            for (var k = 0; k < Math.Abs(clicks); k++)
            {
                if (r.NextDouble() < SlipShare) move += Math.Sign(clicks) * (r.NextDouble() < 0.5 ? -1 : 1) * Make.ClickUm[side];
            }
        }
        var taken = move > 0 ? Math.Min(Make.DeadBandUm[side] - slack[side], move) : Math.Max(-slack[side], move);
        slack[side] += taken;
        end[side] -= move - taken;
    }

    public void Lap(double minutes)
    {
        const double Part = 0.25;
        LapMinutes += minutes;
        roots?.Lapped();
        var luck = quiet ? 1 : 0.8 + (0.4 * Chance.Uniform(Make.Seed, Chance.Of.Lapping, Outings, laps++));
        Span<double> off = stackalloc double[3];
        for (var left = minutes; left > 0; left -= Part)
        {
            var m = Math.Min(Part, left);
            for (var s = 0; s < 3; s++)
            {
                var bite = 1 / (1 + Math.Exp((Gap(s) - 22) / 6));
                off[s] = Make.LapUmPerMinute * m * bite * luck;
                edge[s] = FreshUm + ((edge[s] - FreshUm) * Math.Pow(0.5, m * bite / Make.HalfLifeMinutes));
            }
            WearOff(off);
            runOut *= 1 - (0.01 * m);
        }
    }

    /// <summary>Both ends brought to the same drag, come in from outside.</summary>
    public void SquareUp(double stripUm)
    {
        roots?.SetAnew();
        for (var side = 0; side < 2; side++)
        {
            var off = quiet ? 0 : 5 * Chance.Normal(Make.Seed, Chance.Of.Turning, Outings, side, 1000 + turns[side]++);
            (end[side], slack[side]) = (stripUm + off, Make.DeadBandUm[side]);
        }
    }

    public void File()
    {
        for (var s = 0; s < 3; s++) edge[s] = (edge[s] + FreshUm) / 2;
    }

    public void Grind()
    {
        Reassemble();
        roots?.Lapped();
        Array.Fill(edge, 2);
        (bow, runOut) = (0.2 * bow, 0.4 * runOut);
        SteelUm += GrindUm;
    }

    /// <summary>Taken apart and put together again: the ends stand anew.</summary>
    public void Reassemble()
    {
        roots?.SetAnew();
        for (var side = 0; side < 2; side++) (end[side], slack[side]) = (50 + (quiet ? 0 : 15 * Chance.Normal(Make.Seed, Chance.Of.Turning, Outings, side, 2000 + turns[side]++)), Make.DeadBandUm[side] / 2);
    }

    /// <summary>The knife's screws slackened and tightened: of hollow knives every second was pulled by them, and most of it goes, once.</summary>
    public void SetKnifeScrews()
    {
        if (!slackened && bow > 0 && Chance.Uniform(Make.Seed, Chance.Of.Screws) < 0.5) bow /= 3;
        slackened = true;
    }

    /// <summary>Mows once.</summary>
    public Outing Mow()
    {
        const int Parts = 4;
        var h = Hours / Parts;
        var r = quiet ? null : Chance.Stream(Make.Seed, Chance.Of.Wear, Outings);
        double N(double sd) => r is null ? 0 : Chance.Normal(r, 0, sd);
        var day = Math.Exp(N(0.25) - (r is null ? 0 : 0.03));       // dusty days and clean ones
        var clean = 0.0;
        Span<double> off = stackalloc double[3];
        for (var part = 0; part < Parts; part++)
        {
            for (var s = 0; s < 3; s++)
            {
                clean += NormalMath.Phi((Make.CleanUm - Gap(s) - edge[s]) / 8) / (3 * Parts);
                var pressed = 0.0;
                for (var b = 0; b < UnitMake.Blades; b++) pressed += Math.Max(0, StandsOut(s, b) - Gap(s)) / UnitMake.Blades;
                off[s] = pressed * OpensPerUmHour * h;
                edge[s] += (pressed * BluntsPerUmHour * h) + (Dulled(r, h) * (roots?.Dulls(edge[s], h) ?? 1));
            }
            WearOff(off);
            for (var side = 0; side < 2; side++) end[side] += (Make.OpeningUmPerHour[side] * day * h * (roots?.Opens(side, edge[2 * side], h) ?? 1)) + (Make.OpeningUmPerOuting[side] / Parts) + N(1.3 * Math.Sqrt(h));
            roots?.Ran(h);
        }
        if (roots is not null && !quiet)
        {
            for (var side = 0; side < 2; side++) end[side] += RootWear.SettlesUm(Make.Seed, Outings, side);
        }
        var strike = quiet ? null : Strike.Of(Make.Seed, Outings);
        if (strike is not null) Struck(strike);
        if (!quiet) Outings++;
        (turns[0], turns[1], laps, Spell) = (0, 0, 0, 0);
        return new(clean, strike);
    }

    /// <summary>Steel that goes at a station opens it there: ends follow the sides, the bow what the centre loses more than they.</summary>
    private void WearOff(ReadOnlySpan<double> off)
    {
        end[0] += off[0];
        end[1] += off[2];
        bow += off[1] - ((off[0] + off[2]) / 2);
        SteelUm += (off[0] + off[1] + off[2]) / 3;
    }

    /// <summary>Dulling grain by grain.</summary>
    private double Dulled(Random? r, double h)
    {
        if (r is null) return Make.DullingUmPerHour * h;
        var (sum, t) = (0.0, -Math.Log(1 - r.NextDouble()) / GrainsPerHour);
        while (t < h)
        {
            sum += -Math.Log(1 - r.NextDouble()) * Make.DullingUmPerHour / GrainsPerHour;
            t += -Math.Log(1 - r.NextDouble()) / GrainsPerHour;
        }
        return sum;
    }

    private void Struck(Strike s)
    {
        for (var side = 0; side < 2; side++) end[side] += s.EndsUm[side];
        if (s.Station == 1) bow += s.OffUm;
        else end[s.Station / 2] += s.OffUm;
        edge[s.Station] += s.BluntsUm;
    }
}

/// <summary>How a mowing went: share of leaf cut clean, and what was hit.</summary>
internal readonly record struct Outing(double Clean, Strike? Strike);
