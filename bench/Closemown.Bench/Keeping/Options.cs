using System.Globalization;

namespace Closemown.Bench.Keeping;

/// <summary>Reads "--name number".</summary>
internal static class Options
{
    public static int Number(string[] args, string name, int otherwise)
    {
        var at = Array.IndexOf(args, name);
        if (at < 0) return otherwise;
        return at + 1 < args.Length && int.TryParse(args[at + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0
            ? n
            : throw new ArgumentException($"{name} needs a whole number above 0.");
    }
}
