namespace Closemown.Bench.Workshop;

/// <summary>What a person's hands and eyes read off a unit. Cut-points and scatter are invented, near common practice.</summary>
/// <remarks>A reading's noise hangs on the mowing, the check, the station and how often it was made there, not on other readings.</remarks>
internal sealed class Hand(CuttingUnit unit, Circumstances c)
{
    private const double WetShare = 0.08;
    private static readonly string[] Kinds = ["paper-cut", "paper-drag", "contact", "torch", "swath"];
    private readonly Dictionary<(int Kind, int Station), int> done = [];
    private int outing = -1;

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

    public string Read(string check, int s)
    {
        if (outing != unit.Outings)
        {
            done.Clear();
            outing = unit.Outings;
        }
        var kind = Array.IndexOf(Kinds, check);
        var n = done[(kind, s)] = done.GetValueOrDefault((kind, s)) + 1;
        return Read(check, s, n);
    }

    /// <summary>The reading made the n-th time since the last mowing.</summary>
    public string Read(string check, int s, int n)
    {
        var m = unit.Make;
        var r = Chance.Stream(m.Seed, Chance.Of.Reading, unit.Outings, Array.IndexOf(Kinds, check), s, n);
        double N(double sd) => Chance.Normal(r, 0, sd);
        var blade = r.Next(UnitMake.Blades);                // nobody says which blade the strip was under
        var (x, low, high) = check switch
        {
            "paper-cut" => (unit.Gap(s) - unit.StandsOut(s, blade) + unit.Edge(s) + m.PaperShiftUm + N(5.5 * c.Fingers), 0.45 * m.StripUm, 0.7 * m.StripUm),
            "paper-drag" => (unit.Gap(s) - unit.StandsOut(s, blade) + N(5.5 * c.Fingers), m.StripUm - 8, m.StripUm + 8),
            "contact" => (unit.Gap(s) - Enumerable.Range(0, UnitMake.Blades).Max(b => unit.StandsOut(s, b)) + N(4.5 * c.Fingers), -12.0, 4.0),
            "torch" => (unit.Edge(s) + N(5), 8, 20),
            "swath" => (unit.Gap(s) + unit.Edge(s) + Wet() + N(10), m.CleanUm + 5, m.CleanUm + 40),
            _ => throw new ArgumentOutOfRangeException(nameof(check), check, "not a check"),
        };
        var read = x < low ? 0 : x < high ? 1 : 2;
        if (r.NextDouble() < c.Mistakes) read = read == 1 ? 2 * r.Next(2) : 1;
        return Words(check)[read];
    }

    /// <summary>On a wet day the swath looks worse all over, whatever the edge.</summary>
    private double Wet() => Chance.Uniform(unit.Make.Seed, Chance.Of.Reading, unit.Outings, -1) < WetShare ? 10 : 0;
}
