namespace Closemown.Turf;

/// <summary>All that a plan depends on: the turf as believed, what the days may bring, the person's time and wish.</summary>
/// <remarks>Arrays by trace then day: <c>[trace * Days + day]</c>. Day 0 is the day of <see cref="First"/>, at mowing time, before any mowing.</remarks>
public sealed record PlanProblem
{
    /// <summary>The first day.</summary>
    public required DateOnly First { get; init; }

    /// <summary>Days looked at, 1 to 90.</summary>
    public required int Days { get; init; }

    /// <summary>Traces: ways the weather and the growth may go.</summary>
    public required int Traces { get; init; }

    /// <summary>Growth from the mowing time of the day before to that of the day, mm; that of day 0 is not used.</summary>
    public required double[] GrowthMm { get; init; }

    /// <summary>Whether the day keeps everyone off.</summary>
    public required bool[] Off { get; init; }

    /// <summary>Whether the turf wilts.</summary>
    public required bool[] Wilting { get; init; }

    /// <summary>Stress of the day, 0 to 3.</summary>
    public required double[] Stress { get; init; }

    /// <summary>Standing height on day 0 by trace, mm.</summary>
    public required double[] CanopyMm { get; init; }

    /// <summary>Cut made less cut as set by trace, mm: the same at every mowing of a trace.</summary>
    public required double[] CutOffMm { get; init; }

    /// <summary>The cut as set now, mm.</summary>
    public required double CutMm { get; init; }

    /// <summary>The cut wanted, mm.</summary>
    public required double WishMm { get; init; }

    /// <summary>When it is wanted; null for as soon as may be.</summary>
    public DateOnly? By { get; init; }

    /// <summary>Mowings since the last lowering; many where there was none.</summary>
    public int MowingsSinceLowering { get; init; } = PlanRules.MowingsApart;

    /// <summary>Probability that the person can mow, by day.</summary>
    public required double[] Free { get; init; }

    /// <summary>Days with no change of height (before a match).</summary>
    public required bool[] NoChange { get; init; }

    /// <summary>Days of a match.</summary>
    public required bool[] Fixture { get; init; }

    /// <summary>Mean and spread of the green base, mm, and the height kept that it follows; null where nothing is known of it.</summary>
    public (double Mean, double Sd)? BaseMm { get; init; }

    /// <summary>What things cost.</summary>
    public PlanLosses Losses { get; init; } = new();

    internal double Growth(int trace, int day) => GrowthMm[(trace * Days) + day];

    /// <exception cref="ArgumentException">A length or a number does not fit.</exception>
    internal PlanProblem Checked()
    {
        if (Days is < 1 or > 90) throw new ArgumentException("A plan looks 1 to 90 days ahead.");
        if (Traces < 1) throw new ArgumentException("A plan needs a trace.");
        var n = Traces * Days;
        if (GrowthMm.Length != n || Off.Length != n || Wilting.Length != n || Stress.Length != n) throw new ArgumentException($"Arrays by trace and day hold {n} numbers.");
        if (CanopyMm.Length != Traces || CutOffMm.Length != Traces) throw new ArgumentException($"Arrays by trace hold {Traces} numbers.");
        if (Free.Length != Days || NoChange.Length != Days || Fixture.Length != Days) throw new ArgumentException($"Arrays by day hold {Days} numbers.");
        if (!(CutMm > 0 && WishMm > 0)) throw new ArgumentException("Heights are above 0.");
        return this;
    }
}
