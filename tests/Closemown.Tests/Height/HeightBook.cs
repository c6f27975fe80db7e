using Closemown.Entries;
using Closemown.Tests.Entries;

namespace Closemown.Tests.Height;

/// <summary>Short books about the height of one unit, "cylinder", for tests.</summary>
internal static class HeightBook
{
    public const string Unit = "cylinder";

    /// <summary>Entries ten minutes apart in the order given, ids from 1.</summary>
    public static Entry[] Entries(params string[] bodies) => [.. bodies.Select((b, i) => Lines.Entry(b, i + 1, 10 * i))];
}
