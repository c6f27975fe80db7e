namespace Closemown.Bench.Workshop;

/// <summary>What a person's hands and eyes read off a unit. Cut-points and scatter are invented, near common practice.</summary>
/// <remarks>
/// Who feels again a minute later with nothing changed has the same hand, the same strip and mostly the same blade: part of the error is the spell's.
/// A reading's noise hangs on the mowing, the spell, the check, the station and how often it was made there, not on other readings.
/// </remarks>
internal sealed class Hand(CuttingUnit unit, Circumstances c)
{
    private const double WetShare = 0.08;
    private const int SpellApart = 10_000;              // more readings than anybody makes with nothing changed
    private static readonly string[] Kinds = ["paper-cut", "paper-drag", "contact", "torch", "swath", "straightedge"];
    private readonly Dictionary<(int Spell, int Kind, int Station), int> done = [];
    private int outing = -1;

    /// <summary>The strip in use, as thick as it truly is.</summary>
    public double StripUm { get; private set; } = unit.Make.StripUm;

    /// <summary>Words of a check in ascending order of what it reads.</summary>
    public static string[] Words(string check) => check switch
    {
        "paper-cut" => ["cuts", "nicks", "folds"],
        "paper-drag" => ["tight", "slight", "loose"],
        "contact" => ["heavy", "light", "none"],
        "torch" => ["none", "thin", "wide"],
        "swath" => ["clean", "ragged", "uncut"],
        _ => throw new ArgumentOutOfRangeException(nameof(check), check, "not a check"),
    };

    /// <summary>Where nothing is shared it does not matter either when something was changed.</summary>
    private int Spell => c.SharedShare > 0 ? unit.Spell : 0;

    public string Read(string check, int s) => Read(check, s, Again(Array.IndexOf(Kinds, check), s));

    /// <summary>Light under a straightedge along the knife, in the middle, mm; none where it stands proud.</summary>
    public double HollowMm()
    {
        const double ScatterMm = 0.01;
        var kind = Array.IndexOf(Kinds, "straightedge");
        return Math.Round(Math.Max(0, (unit.Bow / 1000) + (ScatterMm * Error(Own(kind, 1, Again(kind, 1)), kind, 1))), 3);
    }

    /// <summary>Whether the strip cuts at all places under a middling blade, but for the hand's error.</summary>
    public bool PaperWouldCut() => Enumerable.Range(0, 3).All(s => unit.Gap(s) + unit.Edge(s) + unit.Make.PaperShiftUm < 0.45 * StripUm);

    /// <summary>Another strip, said to be so thick; off by the same share as strips are.</summary>
    public void TakeStrip(double um) => StripUm = um * (1 + Chance.Normal(Chance.Stream(unit.Make.Seed, Chance.Of.Strip, unit.Outings), 0, 0.05));

    /// <summary>The reading made the n-th time in this spell.</summary>
    public string Read(string check, int s, int n)
    {
        var m = unit.Make;
        var kind = Array.IndexOf(Kinds, check);
        var r = Own(kind, s, n);
        var blade = r.Next(UnitMake.Blades);                // nobody says which blade the strip was under
        if (Chance.Uniform(m.Seed, Chance.Of.Blade, unit.Outings, Spell, kind, s, n) < c.SharedShare) blade = Own(kind, s, 1).Next(UnitMake.Blades);
        var error = Error(r, kind, s);
        var (x, low, high) = check switch
        {
            "paper-cut" => (unit.Gap(s) - unit.StandsOut(s, blade) + unit.Edge(s) + m.PaperShiftUm + (5.5 * c.Fingers * error), 0.45 * StripUm, 0.7 * StripUm),
            "paper-drag" => (unit.Gap(s) - unit.StandsOut(s, blade) + (5.5 * c.Fingers * error), StripUm - 8, StripUm + 8),
            "contact" => (unit.Gap(s) - Enumerable.Range(0, UnitMake.Blades).Max(b => unit.StandsOut(s, b)) + (4.5 * c.Fingers * error), -12.0, 4.0),
            "torch" => (unit.Edge(s) + (5 * error), 8, 20),
            "swath" => (unit.Gap(s) + unit.Edge(s) + Wet() + (10 * error), m.CleanUm + 5, m.CleanUm + 40),
            _ => throw new ArgumentOutOfRangeException(nameof(check), check, "not a check"),
        };
        var read = x < low ? 0 : x < high ? 1 : 2;
        if (r.NextDouble() < c.Mistakes) read = read == 1 ? 2 * r.Next(2) : 1;
        return Words(check)[read];
    }

    /// <summary>How often that was read in this spell, with this time.</summary>
    private int Again(int kind, int s)
    {
        if (outing != unit.Outings)
        {
            done.Clear();
            outing = unit.Outings;
        }
        return done[(Spell, kind, s)] = done.GetValueOrDefault((Spell, kind, s)) + 1;
    }

    /// <summary>An error in spreads: a share of its variance is the spell's, the rest this reading's own.</summary>
    private double Error(Random own, int kind, int s) =>
        (Math.Sqrt(1 - c.SharedShare) * Chance.Normal(own, 0, 1)) + (Math.Sqrt(c.SharedShare) * Chance.Normal(unit.Make.Seed, Chance.Of.Shared, unit.Outings, Spell, kind, s));

    /// <summary>What is this reading's alone.</summary>
    private Random Own(int kind, int s, int n) => Chance.Stream(unit.Make.Seed, Chance.Of.Reading, unit.Outings, kind, s, n + (Spell * SpellApart));

    /// <summary>On a wet day the swath looks worse all over, whatever the edge.</summary>
    private double Wet() => Chance.Uniform(unit.Make.Seed, Chance.Of.Reading, unit.Outings, -1) < WetShare ? 10 : 0;
}
