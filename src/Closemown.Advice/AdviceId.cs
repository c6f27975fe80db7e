using System.Globalization;
using System.Text;

namespace Closemown.Advice;

/// <summary>The name of an advice: the question and the state of the book it was given on, so that any process can give it again.</summary>
/// <remarks>Form: <c>next-COUNT-HASH-QUESTION</c>; COUNT entries had arrived, HASH is the start of the book's hash then, QUESTION is base64url.</remarks>
public static class AdviceId
{
    private const int HashLength = 8;

    public static string Of(NextQuestion q, int count, string hash)
    {
        ArgumentNullException.ThrowIfNull(q);
        ArgumentNullException.ThrowIfNull(hash);
        var text = string.Join('\n', q.Now.UtcTicks.ToString(CultureInfo.InvariantCulture), q.AtBench ? "1" : "0", q.PriceOfMinute.ToString("R", CultureInfo.InvariantCulture), q.Unit);
        return $"next-{count.ToString(CultureInfo.InvariantCulture)}-{Start(hash)}-{Convert.ToBase64String(Encoding.UTF8.GetBytes(text)).TrimEnd('=').Replace('+', '.').Replace('/', '_')}";
    }

    /// <summary>Reads an id; false where the text is none.</summary>
    public static bool TryRead(string id, out NextQuestion? question, out int count, out string hash)
    {
        ArgumentNullException.ThrowIfNull(id);
        (question, count, hash) = (null, 0, "");
        var parts = id.Split('-', 4);
        if (parts.Length != 4 || parts[0] != "next" || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out count)) return false;
        hash = parts[2];
        var base64 = parts[3].Replace('.', '+').Replace('_', '/');
        var bytes = new byte[base64.Length];
        if (!Convert.TryFromBase64String(base64.PadRight((base64.Length + 3) / 4 * 4, '='), bytes, out var n)) return false;
        var q = Encoding.UTF8.GetString(bytes, 0, n).Split('\n', 4);             // the unit comes last: its name may hold a line break
        if (q.Length != 4 || !long.TryParse(q[0], NumberStyles.None, CultureInfo.InvariantCulture, out var ticks) || ticks > DateTimeOffset.MaxValue.Ticks
            || !double.TryParse(q[2], NumberStyles.Float, CultureInfo.InvariantCulture, out var price) || !(price > 0)) return false;
        question = new(q[3], new DateTimeOffset(ticks, TimeSpan.Zero), q[1] == "1", price);
        return true;
    }

    /// <summary>Whether a book's hash is the one an id was made on.</summary>
    public static bool Fits(string start, string hash)
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(hash);
        return Start(hash) == start;
    }

    private static string Start(string hash) => hash.Length == 0 ? "0" : hash[..Math.Min(HashLength, hash.Length)];
}
