using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>What cannot be is refused, with the value and the interval; nothing turns into a silent not-a-number.</summary>
public sealed class RefusalTests
{
    private static readonly ReferenceWeather Day = new() { TMinC = 10, TMaxC = 20, LatitudeDeg = 50, DayOfYear = 180 };

    private static readonly Dictionary<string, Func<object>> Impossible = new()
    {
        ["saturation at no temperature"] = () => SaturationVapourPressure.Kpa(double.NaN),
        ["saturation at −250 °C"] = () => SaturationVapourPressure.Kpa(-250),
        ["a day upside down"] = () => SaturationVapourPressure.MeanKpa(20, 10),
        ["slope at 300 °C"] = () => SaturationVapourPressure.SlopeKpaPerC(300),
        ["humidities upside down"] = () => VapourPressure.FromHumiditiesKpa(10, 20, 80, 50),
        ["humidity over 100"] = () => VapourPressure.FromMeanHumidityKpa(10, 20, 101),
        ["highest humidity below 0"] = () => VapourPressure.FromHighestHumidityKpa(10, -1),
        ["wet bulb over the dry"] = () => VapourPressure.FromWetBulbKpa(20, 21, 101),
        ["wet bulb below that of dry air"] = () => VapourPressure.FromWetBulbKpa(40, 0, 101),
        ["pressure below ground"] = () => AirPressure.Kpa(-1000),
        ["no pressure"] = () => AirPressure.PsychrometricKpaPerC(0),
        ["dew point of dry air"] = () => DewPoint.C(20, 0),
        ["dew point of no vapour"] = () => DewPoint.FromVapourPressureC(0),
        ["frost point of steam"] = () => IceVapourPressure.FrostPointC(200),
        ["wet bulb over 100 %"] = () => WetBulb.C(20, 120),
        ["wind read on the ground"] = () => WindProfile.At2M(3, 0.05),
        ["wind backwards"] = () => WindProfile.At2M(-1, 2),
        ["leaf wetness over 100 %"] = () => LeafWetness.Wet(101),
        ["frost at no temperature"] = () => FrostRisk.Of(double.NaN),
        ["soil without diffusivity"] = () => SoilWarmth.DampingDepthM(0),
        ["depth above ground"] = () => SoilWarmth.LagDays(-0.1, 5e-7),
        ["day 367"] = () => DayLength.Hours(50, 367),
        ["latitude 91"] = () => ExtraterrestrialRadiation.MjM2(91, 1),
        ["sunshine of 25 h"] = () => SolarRadiation.FromSunshineMjM2(25, 12, 30),
        ["radiation below 0"] = () => NetRadiation.ShortWaveMjM2(-1),
        ["vapour below 0"] = () => NetRadiation.LongWaveMjM2(10, 20, -0.1, 10, 20),
        ["soil heat of no month"] = () => SoilHeatFlux.MonthMjM2(double.NaN, 10),
        ["dew point over the day"] = () => ReferenceEvapotranspiration.Of(Day with { DewC = 21 }),
        ["wind of 200 m/s"] = () => ReferenceEvapotranspiration.Of(Day with { WindMs = 200 }),
        ["radiation of 100 MJ"] = () => ReferenceEvapotranspiration.Of(Day with { RadiationMjM2 = 100 }),
        ["Hargreaves upside down"] = () => Hargreaves.Mm(20, 10, 50, 180),
        ["coefficient of no grass"] = () => TurfCoefficient.Kc((TurfGrass)9, SeasonPart.End),
        ["cap below base"] = () => DegreeDays.Sine(5, 20, 10, 9),
        ["degree days of no base"] = () => DegreeDays.Mean(5, 20, double.NaN),
        ["growth at no temperature"] = () => GrowthPotential.Of(double.PositiveInfinity, TurfGrass.Cool),
        ["growth of no grass"] = () => GrowthPotential.Of(20, (TurfGrass)9),
        ["growth beyond the best"] = () => LeafGrowth.MmPerDay(1, 1.2),
        ["clock before its start"] = () => GrowthRegulator.CreepingBentgrass.After(-1, 5, 10),
        ["capacity below wilting"] = () => new RootZone(0.04, 0.16, 120),
        ["roots of no depth"] = () => new RootZone(0.16, 0.04, 0),
        ["water of more than all"] = () => SoilWaterGrowth.Share(1.2, 0.04, 0.16),
        ["depletion beyond the total"] = () => WaterStress.Ks(14.4, 0.4, 15),
        ["demand below 0"] = () => WaterBalance.Day(14.4, 0.4, 3, -1, 0),
        ["rain below 0"] = () => WaterBalance.Day(14.4, 0.4, 3, 4, -1),
        ["can below 0"] = () => CatchCans.LowQuarter([1, 2, 3, -1]),
        ["uniformity over 1"] = () => CatchCans.ChristiansenOf(1.5),
        ["dollar spot at 120 %"] = () => DollarSpot.Probability(20, 120),
        ["brown patch at no temperature"] = () => BrownPatch.Index(80, double.NaN),
        ["a night of 25 humid hours"] = () => PythiumBlight.Favoured(21, 31, 25),
        ["colour over 255"] = () => DarkGreenColour.Index(300, 10, 10),
        ["colour below 0"] = () => GreenCover.ByRatios(-1, 10, 10),
        ["nitrogen below 0"] = () => NitrogenByGrowth.MonthGm2(-1, 12, TurfGrass.Cool),
        ["pH 15"] = () => SoilGuideline.MgKg(SoilNutrient.Sulphur, 15),
        ["no nutrient"] = () => SoilGuideline.MgKg((SoilNutrient)9),
        ["soil of no depth"] = () => SoilNeed.Gm2(10, 0),
        ["need of a use below 0"] = () => SoilNeed.Of(-1, 1, 1),
        ["irrigation below 0"] = () => IrrigationNutrient.Gm2(-1, 10),
        ["the whole leaf"] = () => ThirdRule.CanopyMm(4, 1),
        ["no cuts"] = () => ClipForHeight.OfCutsPerMetreMm(0),
        ["clippings of no area"] = () => ClippingVolume.MlM2(1, 0),
        ["a ball that does not roll"] = () => GreenSpeed.Corrected(0, 3),
        ["deceleration of no roll"] = () => GreenSpeed.DecelerationMs2(0),
    };

    public static TheoryData<string> Names => [.. Impossible.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void It_is_refused(string name) => Assert.Throws<ArgumentOutOfRangeException>(() => Impossible[name]());

    [Theory]
    [InlineData(new double[] { 1, 2, 3 })]
    [InlineData(new double[] { 0, 0, 0, 0 })]
    public void Too_few_cans_or_empty_ones_have_no_uniformity(double[] cans) => Assert.Throws<ArgumentException>(() => CatchCans.LowQuarter(cans));

    [Fact]
    public void A_refusal_names_the_value_and_the_interval()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => DayLength.Hours(95, 10));
        Assert.Equal("latitudeDeg", refusal.ParamName);
        Assert.Equal(95.0, refusal.ActualValue);
        Assert.StartsWith("It lies from -90 to 90.", refusal.Message, StringComparison.Ordinal);
    }
}
