using System.Runtime.CompilerServices;

namespace Closemown.Turf;

/// <summary>Checks at the door: what cannot be, whatever a formula says, is refused with the value and the interval.</summary>
internal static class Must
{
    /// <summary>Colder or hotter than this is no weather, °C.</summary>
    private const double NoWeatherC = 100;

    /// <summary>A finite number from low to high, ends included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public static void Lie(double x, double low, double high, [CallerArgumentExpression(nameof(x))] string name = "")
    {
        if (!(x >= low && x <= high)) throw new ArgumentOutOfRangeException(name, x, $"It lies from {Text.N(low)} to {Text.N(high)}.");
    }

    /// <summary>A finite number above 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public static void BePositive(double x, [CallerArgumentExpression(nameof(x))] string name = "")
    {
        if (!(x > 0 && double.IsFinite(x))) throw new ArgumentOutOfRangeException(name, x, "It is a number above 0.");
    }

    /// <summary>A finite number, 0 or above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public static void NotBeNegative(double x, [CallerArgumentExpression(nameof(x))] string name = "")
    {
        if (!(x >= 0 && double.IsFinite(x))) throw new ArgumentOutOfRangeException(name, x, "It is a number, 0 or above.");
    }

    /// <summary>A temperature of the air, °C: −100 to 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public static void BeTemperature(double c, [CallerArgumentExpression(nameof(c))] string name = "") => Lie(c, -NoWeatherC, NoWeatherC, name);

    /// <summary>The lowest and highest temperature of a day, °C, in this order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">They are not.</exception>
    public static void BeDay(double tMinC, double tMaxC)
    {
        BeTemperature(tMinC);
        BeTemperature(tMaxC);
        if (tMaxC < tMinC) throw new ArgumentOutOfRangeException(nameof(tMaxC), tMaxC, $"The day's highest temperature is not below its lowest, {Text.N(tMinC)}.");
    }

    /// <summary>Relative humidity, %: 0 to 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public static void BePercent(double pct, [CallerArgumentExpression(nameof(pct))] string name = "") => Lie(pct, 0, 100, name);
}
