using System.Globalization;

namespace Closemown.Typing;

/// <summary>Chances as people say them.</summary>
public static class Chance
{
    /// <summary>"about 1 in 140".</summary>
    public static string OneIn(double p)
    {
        var n = 1 / Math.Max(p, 1e-6);
        var rounded = n < 10 ? Math.Round(n) : n < 100 ? Math.Round(n / 5) * 5 : n < 1000 ? Math.Round(n / 10) * 10 : Math.Round(n / 1000) * 1000;
        return $"about 1 in {Math.Max(2, rounded).ToString("0", CultureInfo.InvariantCulture)}";
    }

    /// <summary>"12 minutes", "1.5 hours"; nothing for none.</summary>
    public static string Minutes(double minutes, char decimalSign) =>
        minutes <= 0 ? "" : minutes < 1 ? "under a minute" : minutes < 1.5 ? "a minute" : minutes < 120 ? $"{(minutes < 10 ? minutes.ToString("0.#", CultureInfo.InvariantCulture).Replace('.', decimalSign) : minutes.ToString("0", CultureInfo.InvariantCulture))} minutes" : $"{(minutes / 60).ToString("0.#", CultureInfo.InvariantCulture).Replace('.', decimalSign)} hours";
}
