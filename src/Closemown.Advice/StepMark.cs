using System.Globalization;

namespace Closemown.Advice;

/// <summary>A step in short, as an advice's id holds it: what must be known of it where it is declined.</summary>
/// <remarks>
/// Form: the step's name; for clicks the two numbers behind it; for checks the stations behind an <c>@</c>:
/// <c>clicks 2 -1</c>, <c>contact@02</c>.
/// </remarks>
internal static class StepMark
{
    public static string Of(AdviceStep step)
    {
        var clicks = step.Left is null && step.Right is null ? ""
            : string.Create(CultureInfo.InvariantCulture, $" {step.Left ?? 0} {step.Right ?? 0}");
        var stations = string.Concat(step.Stations.Select(s => s.ToString(CultureInfo.InvariantCulture)));
        return step.Do + clicks + (stations.Length == 0 ? "" : "@" + stations);
    }

    /// <summary>The step that a mark names; null where it is none.</summary>
    public static AdviceStep? Read(string mark)
    {
        var (words, stations) = mark.IndexOf('@', StringComparison.Ordinal) is >= 0 and var at
            ? (mark[..at], mark[(at + 1)..]) : (mark, "");
        var parts = words.Split(' ');
        if (parts[0].Length == 0 || stations.Any(c => c is < '0' or > '2')) return null;
        var step = new AdviceStep(parts[0]) { Stations = [.. stations.Select(c => c - '0')] };
        if (parts.Length == 1) return step;
        return parts.Length == 3 && Whole(parts[1], out var left) && Whole(parts[2], out var right)
            ? step with { Left = left, Right = right } : null;
    }

    private static bool Whole(string text, out int value) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
}
