using Closemown.Entries;
using Closemown.Steel;
using Closemown.Tests.Entries;

namespace Closemown.Tests.Steel;

/// <summary>Short books about one unit, "cylinder", for tests of the steel.</summary>
internal static class SteelBook
{
    public const string Unit = "cylinder";

    /// <summary>Entries ten minutes apart in the order given, ids from 1.</summary>
    public static Entry[] Entries(params string[] bodies) => [.. bodies.Select((b, i) => Lines.Entry(b, i + 1, 10 * i))];

    public static UnitTrack Track(params string[] bodies) => UnitTrack.Of(Unit, Entries(bodies));

    public static SteelBelief Belief(params string[] bodies) => SteelBelief.Of(Track(bodies));

    /// <summary>The description that unit entries add up to.</summary>
    public static UnitDescription Description(params string[] bodies) => UnitDescription.Of(Unit, Entries(bodies));

    public static string All(string kind, string word) => Three(kind, word, word, word);

    public static string Three(string kind, string left, string centre, string right) =>
        $$"""{"kind":"{{kind}}","left":"{{left}}","centre":"{{centre}}","right":"{{right}}"}""";

    public static string Ends(string kind, string left, string right) => $$"""{"kind":"{{kind}}","left":"{{left}}","right":"{{right}}"}""";

    public static string Clicks(double left, double right) => FormattableString.Invariant($$"""{"kind":"clicks","left":{{left}},"right":{{right}}}""");

    public static string Mow(double hours) => FormattableString.Invariant($$"""{"kind":"mow","hours":{{hours}}}""");

    public static string Lap(double minutes) => FormattableString.Invariant($$"""{"kind":"lap","minutes":{{minutes}}}""");

    /// <summary>A unit whose clearance is told as known, µm ± 2, and whose repeated checks are fresh evidence each time: what is tested with it needs evidence, not a person.</summary>
    public static string Known(double clearanceUm, double edgeUm = 15) =>
        FormattableString.Invariant($$"""{"kind":"unit","priors":{"clearanceUm":[{{clearanceUm}},2],"edgeUm":[{{edgeUm}},2],"bowUm":[0,1],"repeatShare":[0,1]} }""");

    /// <summary>Every number a person is shown, by name.</summary>
    public static IEnumerable<(string Name, Estimate Value)> Shown(SteelBelief b)
    {
        for (var s = 0; s < 3; s++)
        {
            yield return ($"clearance {s}", b.ClearanceUm(s));
            yield return ($"edge {s}", b.EdgeUm(s));
        }
        for (var side = 0; side < 2; side++)
        {
            yield return ($"click {side}", b.ClickUm(side));
            yield return ($"opening an hour {side}", b.OpeningUmPerHour(side));
            yield return ($"opening an outing {side}", b.OpeningUmPerOuting(side));
            yield return ($"lost motion {side}", b.LostMotionUm(side));
        }
        yield return ("bow", b.BowUm);
        yield return ("lap", b.LapUmPerMinute);
        yield return ("dulling", b.DullingUmPerHour);
        yield return ("clean", b.CleanUm);
    }
}
