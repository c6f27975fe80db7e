using Closemown.Bench.Workshop;
using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>Strategies that are fairly told beside each other.</summary>
internal enum GreenGroup
{
    /// <summary>Rules that by their own estimate never take more than a third.</summary>
    Bound,

    /// <summary>Rules that do.</summary>
    NotBound,

    /// <summary>Rules that aim at a third, may cut a tenth of a mm lower, and keep the height before a match whatever it takes.</summary>
    Nearly,

    /// <summary>The planner, and the product.</summary>
    Ours,
}

/// <summary>Who mows.</summary>
/// <param name="Group">Whom it is told beside.</param>
/// <param name="Kind">What kind of rule it is, however it is set: of each kind the best is taken.</param>
/// <param name="Title">As it is printed.</param>
/// <param name="Make">Made for a season.</param>
internal sealed record GreenContender(GreenGroup Group, string Kind, string Title, Func<GreenTruth, IGreenStrategy> Make);

/// <summary>All who mow.</summary>
internal static class GreenRoster
{
    public const string Calendar = "calendar", Threshold = "threshold";

    private static readonly (HeightRule Rule, GreenGroup Group, string Title)[] Heights =
    [
        (HeightRule.Bound, GreenGroup.Bound, "bound by the third"),
        (HeightRule.Never, GreenGroup.NotBound, "never raised"),
        (HeightRule.Wish, GreenGroup.NotBound, "at the wish always"),
        (HeightRule.Slowly, GreenGroup.NotBound, "raised, down slowly"),
        (HeightRule.Thirds, GreenGroup.Nearly, "raised, down by thirds"),
    ];

    private static readonly (int Count, string Title)[] Calendars =
        [(1, "calendar of one day"), (CalendarRule.Usual, Calendar), (3, "calendar of three days"), (7, "calendar of every usual day")];

    private static readonly double[] Over = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5];

    private static readonly (string Title, bool Green, bool Days)[] Planners =
    [
        ("planner", false, false), ("planner, told the days", false, true),
        ("planner, told the green", true, false), ("planner, told everything", true, true),
    ];

    public static List<GreenContender> Of(int traces, int horizon, PlanLosses losses)
    {
        List<GreenContender> list = [];
        foreach (var (rule, group, name) in Heights)
        {
            foreach (var (count, title) in Calendars) Add(Calendar, title, t => new CalendarRule(rule, Start(t), count));
            foreach (var over in Over) Add(Threshold, $"{Threshold} {Table.Number(over)}", t => new ThresholdRule(over, rule, Start(t)));
            Add("every free day", "every free day", t => new EveryFreeDay(rule, Start(t)));
            Add("one ahead", "one ahead", t => new OneAhead(rule, Start(t)));

            void Add(string kind, string title, Func<GreenTruth, IGreenStrategy> make) =>
                list.Add(new(group, kind, $"{title}, {name}", make));
        }
        foreach (var (title, green, days) in Planners)
            list.Add(new(GreenGroup.Ours, title, title, t => new PlannedGreen(t, green, days, Start(t), traces, horizon, losses)));
        list.Add(new(GreenGroup.Ours, "Closemown", "Closemown", _ => new ClosemownGreen()));
        return list;
    }

    private static double Start(GreenTruth t) => t.World.Make.StepsDown ? GreenWish.HighMm : GreenWish.LowMm;
}
