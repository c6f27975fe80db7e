namespace Closemown.Turf;

/// <summary>A mean and a standard deviation.</summary>
public readonly record struct Belief(double Mean, double Sd);

/// <summary>Everything a mowing plan is made from.</summary>
public sealed record PlanProblem
{
    /// <summary>First day, the one decided now.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Days shown, 1 to <see cref="PlanLimits.MostDays"/>.</summary>
    public required int Days { get; init; }

    /// <summary>Futures; where they hold fewer days than are solved, their last week is repeated.</summary>
    public required PlanTraces Traces { get; init; }

    /// <summary>What the turf stands at on the first morning, mm.</summary>
    public required Belief CanopyMm { get; init; }

    /// <summary>How high the sward stands where nobody mows, mm: nothing grows past it.</summary>
    public double CeilingMm { get; init; } = AreaDefaults.UntoldCeilingMm;

    /// <summary>Stress on the first morning, 0 none to 3 severe.</summary>
    public Belief Stress { get; init; }

    /// <summary>How long stress takes to fade or build, days.</summary>
    public double StressDays { get; init; } = AreaDefaults.StressDays;

    /// <summary>What the next mowing would leave as the machine is set, mm; the spread is that of one mowing.</summary>
    public required Belief CutMm { get; init; }

    /// <summary>The height that the turf is used to, mm: only below it a mowing is a lowering. Null: as the machine is set.</summary>
    public double? UsedMm { get; init; }

    /// <summary>Height up to which the turf is brown, mm; null where nothing is known: nothing is charged.</summary>
    public Belief? GreenBaseMm { get; init; }

    /// <summary>The green base as a share of the height kept, which it follows over <see cref="GreenBaseDays"/>.</summary>
    public double GreenBaseShare { get; init; } = AreaDefaults.BaseShare;

    /// <inheritdoc cref="GreenBaseShare"/>
    public double GreenBaseDays { get; init; } = 14;

    /// <summary>Height wished, mm.</summary>
    public required double WishMm { get; init; }

    /// <summary>By when; null: as soon as the turf allows.</summary>
    public DateOnly? WishBy { get; init; }

    /// <summary>Least and greatest cut the machine can be set to, mm.</summary>
    public double LowestMm { get; init; } = 2;

    /// <inheritdoc cref="LowestMm"/>
    public double HighestMm { get; init; } = 25;

    /// <summary>Probability that the person can mow, by day from the first; past its end the week before repeats. Empty: always.</summary>
    public IReadOnlyList<double> Free { get; init; } = [];

    /// <summary>Probability of each day that untold days away begin (<see cref="PersonDays.AwayLeast"/> to <see cref="PersonDays.AwayMost"/>); they end where a day is certain.</summary>
    public double AwayBegins { get; init; }

    /// <summary>Minutes to spare, by day from the first; past its end the week before repeats. Empty: no limit.</summary>
    public IReadOnlyList<double> FreeMinutes { get; init; } = [];

    /// <summary>Minutes of a mowing.</summary>
    public double MowingMinutes { get; init; } = 30;

    /// <summary>Minutes more where the height is changed.</summary>
    public double HeightChangeMinutes { get; init; } = 10;

    /// <summary>Days of matches.</summary>
    public IReadOnlyList<DateOnly> Fixtures { get; init; } = [];

    /// <summary>Days before a match, and the day itself, without a change of height.</summary>
    public int NoHeightChangeDays { get; init; } = TurfWish.UsualNoHeightChangeDays;

    /// <summary>Days from the first on which nothing is lowered, as the turf was sanded or opened lately.</summary>
    public int NoLoweringDays { get; init; }

    /// <summary>Whether each day lies in the months of growth, so that the season allows a lower height.</summary>
    /// <remarks>From <see cref="GrowingMonths"/>. Past the end as on its last day; empty for always.</remarks>
    public IReadOnlyList<bool> GrowingOn { get; init; } = [];

    /// <summary>Mowings since the one that went lower last; null where none did.</summary>
    public int? MowingsSinceLowering { get; init; }

    /// <summary>Days since the last mowing where that was above the used height, 0 or more; null where it was not.</summary>
    public int? DaysSinceRaised { get; init; }

    /// <summary>Days on which the person said yes to taking more than a third.</summary>
    public IReadOnlyCollection<DateOnly> OverThirdOn { get; init; } = [];

    /// <summary>How well a canopy will be known on later days, mm: shares near a third are charged by probability.</summary>
    public double CanopySdMm { get; init; } = 0.3;

    public PlanLosses Losses { get; init; } = new();

    /// <summary>A standing height after it has grown, mm: what stood above the ceiling already stays there.</summary>
    internal double Grown(double canopyMm, double growthMm) => Math.Min(canopyMm + growthMm, Math.Max(canopyMm, CeilingMm));

    /// <summary>Refuses what no plan can be made from.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range; the message names it.</exception>
    internal void Check()
    {
        In(Days, 1, PlanLimits.MostDays, "days");
        In(CanopyMm.Mean, 0.1, 500, "canopy, mm");
        In(CanopyMm.Sd, 0, 100, "spread of the canopy, mm");
        In(CeilingMm, 10, 1000, "height of an unmown sward, mm");
        In(CanopySdMm, 0.01, 5, "spread of later canopies, mm");
        In(Stress.Mean, 0, StressSources.Severe, "stress");
        In(Stress.Sd, 0, StressSources.Severe, "spread of stress");
        In(StressDays, 1, 100, "days of stress");
        In(CutMm.Mean, 0.5, 100, "cut, mm");
        In(CutMm.Sd, 0, 5, "spread of the cut, mm");
        In(LowestMm, 0.5, 100, "least cut, mm");
        In(HighestMm, LowestMm, 200, "greatest cut, mm");
        In(WishMm, LowestMm, HighestMm, "wish, mm");
        if (DaysSinceRaised is { } raised) In(raised, 0, 10_000, "days since a mowing above the used height");
        In(GreenBaseShare, 0, 0.95, "green base as a share");
        In(GreenBaseDays, 1, 200, "days of the green base");
        if (UsedMm is { } used) In(used, 0.5, 500, "used height, mm");
        if (GreenBaseMm is { } b)
        {
            In(b.Mean, 0, 100, "green base, mm");
            In(b.Sd, 0, 10, "spread of the green base, mm");
        }
        In(AwayBegins, 0, 1, "probability that days away begin");
        foreach (var p in Free) In(p, 0, 1, "probability of being free");
    }

    private static void In(double v, double low, double high, string what)
    {
        if (!(v >= low && v <= high)) throw new ArgumentOutOfRangeException(what, v, $"{what}: {Text.N(v)} does not lie within {Text.N(low)} and {Text.N(high)}.");
    }
}
