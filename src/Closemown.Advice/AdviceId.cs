using System.Globalization;
using System.Text;

namespace Closemown.Advice;

/// <summary>The name of an advice: the question, the state of the book it was given on, and the step in short, so that any process, on any device, can give it again.</summary>
/// <remarks>
/// Form: <c>next-COUNT-SUM-CONTENT</c>, <c>height-…</c> for setting a height; the book held COUNT entries, SUM is twelve digits of <see cref="BookState"/>, CONTENT is base64url.
/// Older ids are read too: <c>next-COUNT-HASH-QUESTION</c>, HASH the first eight digits of the book's hash after COUNT arrivals, and no step.
/// </remarks>
public static class AdviceId
{
    private const int HashLength = 8;

    private const string AboutSteel = "next", AboutSetting = "height";

    public static string Of(NextQuestion q, AdviceStep step, BookState book)
    {
        ArgumentNullException.ThrowIfNull(q);
        ArgumentNullException.ThrowIfNull(step);
        return Of(AboutSteel, book, StepMark.Of(step), q.Now.UtcTicks.ToString(CultureInfo.InvariantCulture), q.AtBench ? "1" : "0", N(q.PriceOfMinute), q.Unit);
    }

    public static string Of(AimQuestion q, AdviceStep step, BookState book)
    {
        ArgumentNullException.ThrowIfNull(q);
        ArgumentNullException.ThrowIfNull(step);
        return Of(AboutSetting, book, StepMark.Of(step), q.Now.UtcTicks.ToString(CultureInfo.InvariantCulture), q.BenchMm is { } b ? N(b) : "", q.CutMm is { } c ? N(c) : "",
            N(q.TolMm), N(q.Probability), Convert.ToBase64String(Encoding.UTF8.GetBytes(q.Area ?? "")), q.Unit);
    }

    /// <summary>The unit that an advice is about; null where the text is no id.</summary>
    public static string? UnitOf(string id) => Read(id)?.Unit;

    /// <summary>Reads an id; null where the text is none.</summary>
    public static AdviceName? Read(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var parts = id.Split('-', 4);
        if (parts.Length != 4 || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var count)) return null;
        var older = !BookState.TryRead(parts[2], out var sum);
        var (more, step) = (older ? 0 : 1, (AdviceStep?)null);
        if (parts[0] == AboutSteel)
        {
            return Content(parts[3], 4 + more) is { } q && (older || (step = StepMark.Read(q[0])) is not null) && Steel(q[more..]) is { } asked
                ? new(count, sum, older ? parts[2] : null, step, asked, null) : null;
        }
        return parts[0] == AboutSetting && Content(parts[3], 7 + more) is { } h && (older || (step = StepMark.Read(h[0])) is not null) && Setting(h[more..]) is { } aim
            ? new(count, sum, older ? parts[2] : null, step, null, aim) : null;
    }

    // In both the unit comes last: its name may hold a line break.
    private static NextQuestion? Steel(string[] q) => Ticks(q[0], out var now) && Positive(q[2], out var price) ? new(q[3], now, q[1] == "1", price) : null;

    private static AimQuestion? Setting(string[] q)
    {
        if (!Ticks(q[0], out var now) || !Positive(q[3], out var tol) || !Positive(q[4], out var sure) || sure is < 0.5 or >= 1) return null;
        double bench = 0, cut = 0;
        if ((q[1].Length > 0 && !Positive(q[1], out bench)) || (q[2].Length > 0 && !Positive(q[2], out cut)) || (q[1].Length > 0) == (q[2].Length > 0)) return null;
        var area = new byte[q[5].Length];
        if (!Convert.TryFromBase64String(q[5], area, out var n)) return null;
        return new(q[6], now, q[1].Length > 0 ? bench : null, q[2].Length > 0 ? cut : null, n == 0 ? null : Encoding.UTF8.GetString(area, 0, n), tol, sure);
    }

    private static string Of(string about, BookState book, params string[] fields) =>
        $"{about}-{book.Count.ToString(CultureInfo.InvariantCulture)}-{book.Name}-{Convert.ToBase64String(Encoding.UTF8.GetBytes(string.Join('\n', fields))).TrimEnd('=').Replace('+', '.').Replace('/', '_')}";

    private static string[]? Content(string text, int fields)
    {
        var base64 = text.Replace('.', '+').Replace('_', '/');
        var bytes = new byte[base64.Length];
        if (!Convert.TryFromBase64String(base64.PadRight((base64.Length + 3) / 4 * 4, '='), bytes, out var n)) return null;
        var read = Encoding.UTF8.GetString(bytes, 0, n).Split('\n', fields);
        return read.Length == fields ? read : null;
    }

    private static bool Ticks(string text, out DateTimeOffset at)
    {
        at = default;
        if (!long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks) || ticks > DateTimeOffset.MaxValue.Ticks) return false;
        at = new(ticks, TimeSpan.Zero);
        return true;
    }

    /// <summary>No height, tolerance or price that was ever asked for is greater.</summary>
    private const double Most = 1e6;

    private static bool Positive(string text, out double value) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && value > 0 && value <= Most;

    private static string N(double x) => x.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Whether a book's hash is the one an older id was made on.</summary>
    public static bool Fits(string start, string hash)
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(hash);
        return Start(hash) == start;
    }

    private static string Start(string hash) => hash.Length == 0 ? "0" : hash[..Math.Min(HashLength, hash.Length)];
}
