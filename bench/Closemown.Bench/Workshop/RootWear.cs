namespace Closemown.Bench.Workshop;

/// <summary>Another law of wear, to see whether what is said holds where the model's form is wrong. Invented, and nothing is tuned on it.</summary>
/// <remarks>
/// An end opens with the square root of the hours since its adjuster was last turned, an edge dulls with that of the hours since it was lapped or ground:
/// quick at first, then slower. Both go quicker the blunter it is already. Now and then an end settles suddenly, mostly open.
/// </remarks>
internal sealed class RootWear
{
    private const double Quick = 1.6;                    // over four hours a little less than the even law, over one much more
    private const double BluntUm = 25;                   // an edge as blunt as that wears twice as quick as one without bluntness
    private const double SettlesShare = 0.06;            // of mowings
    private const double ClosesShare = 0.25;
    private readonly double[] sinceTurned = [0, 0];
    private double sinceLapped;

    public void Turned(int side) => sinceTurned[side] = 0;

    /// <summary>Both ends stand anew.</summary>
    public void SetAnew() => (sinceTurned[0], sinceTurned[1]) = (0, 0);

    public void Lapped() => sinceLapped = 0;

    /// <summary>How many times its usual rate an end opens in the coming hours.</summary>
    public double Opens(int side, double edgeUm, double hours) => Pace(sinceTurned[side], edgeUm, hours);

    /// <summary>How many times its usual rate an edge dulls in the coming hours.</summary>
    public double Dulls(double edgeUm, double hours) => Pace(sinceLapped, edgeUm, hours);

    public void Ran(double hours)
    {
        sinceTurned[0] += hours;
        sinceTurned[1] += hours;
        sinceLapped += hours;
    }

    /// <summary>What an end settles by in a mowing, + opens; mostly nothing.</summary>
    public static double SettlesUm(int seed, int outing, int side)
    {
        var r = Chance.Stream(seed, Chance.Of.Settling, outing, side);
        if (r.NextDouble() >= SettlesShare / 2) return 0;
        return (r.NextDouble() < ClosesShare ? -1 : 1) * Math.Abs(Chance.Normal(r, 8, 4));
    }

    public RootWear Copy()
    {
        var copy = new RootWear { sinceLapped = sinceLapped };
        sinceTurned.CopyTo(copy.sinceTurned, 0);
        return copy;
    }

    private static double Pace(double since, double edgeUm, double hours) => Quick * (Math.Sqrt(since + hours) - Math.Sqrt(since)) / hours * (0.7 + (0.7 * edgeUm / BluntUm));
}
