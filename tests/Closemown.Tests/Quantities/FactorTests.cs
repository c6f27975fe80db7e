using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Unit factors against an independent implementation. Source: UnitsNet 5.75.1, which rounds more than once, so 1e-12
/// relative.</summary>
public sealed class FactorTests
{
    private const double Relative = 1e-12;

    public static TheoryData<string, double, double> Factors => new()
    {
        { "in", Length.Parse("7 in", WritingStyle.Plain).Mm, UnitsNet.Length.FromInches(7).Millimeters },
        { "thou", Length.Parse("7 thou", WritingStyle.Plain).Um, UnitsNet.Length.FromMils(7).Micrometers },
        { "ft", Length.Parse("7 ft", WritingStyle.Plain).Mm, UnitsNet.Length.FromFeet(7).Millimeters },
        { "cm", Length.Parse("7 cm", WritingStyle.Plain).Mm, UnitsNet.Length.FromCentimeters(7).Millimeters },
        { "mph", Speed.Parse("7 mph", WritingStyle.Plain).MetresPerSecond, UnitsNet.Speed.FromMilesPerHour(7).MetersPerSecond },
        { "km/h", Speed.Parse("7 km/h", WritingStyle.Plain).MetresPerSecond, UnitsNet.Speed.FromKilometersPerHour(7).MetersPerSecond },
        { "m/min", Speed.Parse("7 m/min", WritingStyle.Plain).MetresPerSecond, UnitsNet.Speed.FromMetersPerMinutes(7).MetersPerSecond },
        { "ft/min", Speed.Parse("7 ft/min", WritingStyle.Plain).MetresPerSecond, UnitsNet.Speed.FromFeetPerMinute(7).MetersPerSecond },
        { "sq ft", Area.Parse("7 sq ft", WritingStyle.Plain).SquareMetres, UnitsNet.Area.FromSquareFeet(7).SquareMeters },
        { "sq yd", Area.Parse("7 sq yd", WritingStyle.Plain).SquareMetres, UnitsNet.Area.FromSquareYards(7).SquareMeters },
        { "/s", Rotation.Parse("7 /s", WritingStyle.Plain).PerMinute,
            UnitsNet.RotationalSpeed.FromRevolutionsPerSecond(7).RevolutionsPerMinute },
        { "cu ft", Volume.Parse("7 cu ft", WritingStyle.Plain).Litres, UnitsNet.Volume.FromCubicFeet(7).Liters },
        { "lb/1000 sq ft", SpreadRate.Parse("7 lb/1000 sq ft", WritingStyle.Plain).GramsPerSquareMetre,
            UnitsNet.Mass.FromPounds(7).Grams / UnitsNet.Area.FromSquareFeet(1000).SquareMeters },
        { "lb/sq ft", SpreadRate.Parse("7 lb/sq ft", WritingStyle.Plain).GramsPerSquareMetre,
            UnitsNet.Mass.FromPounds(7).Grams / UnitsNet.Area.FromSquareFeet(1).SquareMeters },
        { "kg/ha", SpreadRate.Parse("7 kg/ha", WritingStyle.Plain).GramsPerSquareMetre,
            UnitsNet.Mass.FromKilograms(7).Grams / UnitsNet.Area.FromHectares(1).SquareMeters },
        { "°F", Temperature.Parse("77 °F", WritingStyle.Plain).Celsius, UnitsNet.Temperature.FromDegreesFahrenheit(77).DegreesCelsius },
    };

    [Theory]
    [MemberData(nameof(Factors))]
    public void A_factor_agrees(string unit, double ours, double theirs)
    {
        Assert.True(Math.Abs(ours - theirs) <= Relative * Math.Abs(theirs), $"{unit}: {ours:R} and {theirs:R}");
    }
}
