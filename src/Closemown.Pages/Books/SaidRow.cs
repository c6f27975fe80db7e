using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>Of what was said with about one probability, how much came true.</summary>
/// <param name="InHundred">About so many in 100 were said.</param>
/// <param name="Said">What was said on average, 0 to 1.</param>
/// <param name="Readings">How often.</param>
/// <param name="CameTrue">How often it came true.</param>
public sealed record SaidRow(int InHundred, double Said, int Readings, int CameTrue)
{
    private const double Wide = 1.6448536269514722;   // 95 in 100 below, of the normal distribution

    /// <summary>The rows of an answer to <c>score</c>.</summary>
    public static IReadOnlyList<SaidRow> Of(JsonNode? rows) =>
        [.. (rows as JsonArray ?? []).OfType<JsonObject>().Select(r => new SaidRow((int)r["inHundred"]!, (double?)r["saidOnAverage"] ?? (int)r["inHundred"]! / 100.0, (int)r["readings"]!, (int)r["cameTrue"]!))];

    /// <summary>The share that came true, 0 to 1; 0 where nothing was said.</summary>
    public double Share => Readings == 0 ? 0 : (double)CameTrue / Readings;

    /// <summary>The range in which the true share lies with about 90 in 100, 0 to 1.</summary>
    /// <remarks>Wilson, E. B. (1927), Journal of the American Statistical Association 22, 209-212 (from memory).</remarks>
    public (double Low, double High) Range
    {
        get
        {
            if (Readings == 0) return (0, 1);
            double n = Readings, z2 = Wide * Wide, middle = (Share + (z2 / (2 * n))) / (1 + (z2 / n));
            var half = Wide / (1 + (z2 / n)) * Math.Sqrt((Share * (1 - Share) / n) + (z2 / (4 * n * n)));
            return (Math.Max(0, middle - half), Math.Min(1, middle + half));
        }
    }

    /// <summary>Whether what was said lies within that range.</summary>
    public bool Agrees => Said >= Range.Low && Said <= Range.High;
}
