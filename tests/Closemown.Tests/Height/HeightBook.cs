using Closemown.Entries;
using Closemown.Height;
using Closemown.Tests.Entries;

namespace Closemown.Tests.Height;

/// <summary>Short books about the height of one unit, "cylinder", for tests.</summary>
internal static class HeightBook
{
    public const string Unit = "cylinder";

    /// <summary>Entries ten minutes apart in the order given, ids from 1.</summary>
    public static Entry[] Entries(params string[] bodies) => [.. bodies.Select((b, i) => Lines.Entry(b, i + 1, 10 * i))];

    public static HeightTrack Track(params string[] bodies) => HeightTrack.Of(Unit, Entries(bodies));

    public static HeightBelief Belief(params string[] bodies) => HeightBelief.Of(Track(bodies));

    public static string Gauge(double left, double right, string more = "") => FormattableString.Invariant($$"""{"kind":"gauge","leftMm":{{left}},"rightMm":{{right}}{{more}}}""");

    public static string Screw(double left, double right) => FormattableString.Invariant($$"""{"kind":"screw","leftTurns":{{left}},"rightTurns":{{right}}}""");

    public static string Mow(string more = "") => $$"""{"kind":"mow","hours":0.5,"area":"green"{{more}}}""";

    public static string After(string mm, string more = "") => $$"""{"kind":"canopy","when":"after","mm":{{mm}}{{more}}}""";

    public const string Lock = """{"kind":"locked"}""";
}
