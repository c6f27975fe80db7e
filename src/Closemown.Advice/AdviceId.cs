using System.Globalization;
using System.Text;

namespace Closemown.Advice;

/// <summary>The name of an advice: the question and the state of the book it was given on, so that any process can give it again.</summary>
/// <remarks>Form: <c>next-COUNT-HASH-QUESTION</c>, <c>height-…</c> for setting a height; COUNT entries had arrived, HASH is the start of the book's hash then, QUESTION is base64url.</remarks>
public static class AdviceId
{
    private const int HashLength = 8;

    private const string Steel = "next", Setting = "height";

    public static string Of(NextQuestion q, int count, string hash)
    {
        ArgumentNullException.ThrowIfNull(q);
        ArgumentNullException.ThrowIfNull(hash);
        return Of(Steel, count, hash, q.Now.UtcTicks.ToString(CultureInfo.InvariantCulture), q.AtBench ? "1" : "0", N(q.PriceOfMinute), q.Unit);
    }

    public static string Of(AimQuestion q, int count, string hash)
    {
        ArgumentNullException.ThrowIfNull(q);
        ArgumentNullException.ThrowIfNull(hash);
        return Of(Setting, count, hash, q.Now.UtcTicks.ToString(CultureInfo.InvariantCulture), q.BenchMm is { } b ? N(b) : "", q.CutMm is { } c ? N(c) : "",
            N(q.TolMm), N(q.Probability), Convert.ToBase64String(Encoding.UTF8.GetBytes(q.Area ?? "")), q.Unit);
    }

    /// <summary>Whether an id names an advice about the steel.</summary>
    public static bool IsSteel(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return id.StartsWith(Steel + "-", StringComparison.Ordinal);
    }

    /// <summary>The unit that an advice is about; null where the text is no id.</summary>
    public static string? UnitOf(string id) => TryRead(id, out var steel, out _, out _) ? steel!.Unit : TryReadAim(id, out var aim, out _, out _) ? aim!.Unit : null;

    /// <summary>Reads an id; false where the text is none.</summary>
    public static bool TryRead(string id, out NextQuestion? question, out int count, out string hash)
    {
        question = null;
        // The unit comes last: its name may hold a line break.
        if (Read(id, Steel, 4, out count, out hash) is not { } q || !Ticks(q[0], out var now) || !Positive(q[2], out var price)) return false;
        question = new(q[3], now, q[1] == "1", price);
        return true;
    }

    /// <summary>Reads an id of setting a height; false where the text is none.</summary>
    public static bool TryReadAim(string id, out AimQuestion? question, out int count, out string hash)
    {
        question = null;
        if (Read(id, Setting, 7, out count, out hash) is not { } q || !Ticks(q[0], out var now) || !Positive(q[3], out var tol) || !Positive(q[4], out var sure) || sure is < 0.5 or >= 1) return false;
        double bench = 0, cut = 0;
        if ((q[1].Length > 0 && !Positive(q[1], out bench)) || (q[2].Length > 0 && !Positive(q[2], out cut)) || (q[1].Length > 0) == (q[2].Length > 0)) return false;
        var area = new byte[q[5].Length];
        if (!Convert.TryFromBase64String(q[5], area, out var n)) return false;
        question = new(q[6], now, q[1].Length > 0 ? bench : null, q[2].Length > 0 ? cut : null, n == 0 ? null : Encoding.UTF8.GetString(area, 0, n), tol, sure);
        return true;
    }

    private static string Of(string about, int count, string hash, params string[] fields) =>
        $"{about}-{count.ToString(CultureInfo.InvariantCulture)}-{Start(hash)}-{Convert.ToBase64String(Encoding.UTF8.GetBytes(string.Join('\n', fields))).TrimEnd('=').Replace('+', '.').Replace('/', '_')}";

    private static string[]? Read(string id, string about, int fields, out int count, out string hash)
    {
        ArgumentNullException.ThrowIfNull(id);
        (count, hash) = (0, "");
        var parts = id.Split('-', 4);
        if (parts.Length != 4 || parts[0] != about || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out count)) return null;
        hash = parts[2];
        var base64 = parts[3].Replace('.', '+').Replace('_', '/');
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

    private static bool Positive(string text, out double value) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && value > 0 && double.IsFinite(value);

    private static string N(double x) => x.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Whether a book's hash is the one an id was made on.</summary>
    public static bool Fits(string start, string hash)
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(hash);
        return Start(hash) == start;
    }

    private static string Start(string hash) => hash.Length == 0 ? "0" : hash[..Math.Min(HashLength, hash.Length)];
}
