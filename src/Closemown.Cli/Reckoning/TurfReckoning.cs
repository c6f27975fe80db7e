using System.Globalization;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>The published formulas of weather and turf; each marks what lies outside the range its source covers.</summary>
internal static class TurfReckoning
{
    private const string FaoSource = "Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, eq. 6 and its steps";

    public static IReadOnlyList<Reckoning> All { get; } =
    [
        new("et0", "reference evapotranspiration of a day", "mm/day", "FAO-56 Penman-Monteith; what was not read is replaced as the paper says", FaoSource,
            [
                Key("tmin", "lowest temperature, °C"), Key("tmax", "highest temperature, °C"), Key("dew", "mean dew point, °C; or"), Key("rhmin", "lowest humidity, % (with rhmax); or"), Key("rhmax", "highest humidity, %; or"), Key("rhmean", "mean humidity, %"),
                Key("wind", "wind, m/s; 2 m/s where left out"), Key("windheight", "height it was read at, m; 2 where left out"), Key("sun", "hours of sunshine; or"), Key("rad", "solar radiation, MJ/m² a day"),
                Key("lat", "latitude, degrees, north +"), Key("date", "the day, 2026-07-06"), Key("altitude", "height above the sea, m; 0 where left out"),
            ], NoPlain)
        {
            ByName = (given, style) =>
            {
                var read = new TypedValues("et0", given, style);
                var day = ReferenceEvapotranspiration.Of(new ReferenceWeather
                {
                    TMinC = read.Must("tmin", read.Celsius),
                    TMaxC = read.Must("tmax", read.Celsius),
                    LatitudeDeg = read.Must("lat", read.Plain),
                    DayOfYear = read.Day("date").DayOfYear,
                    AltitudeM = read.Metres("altitude") ?? 0,
                    DewC = read.Celsius("dew"),
                    RhMinPct = read.Plain("rhmin"),
                    RhMaxPct = read.Plain("rhmax"),
                    RhMeanPct = read.Plain("rhmean"),
                    WindMs = read.MetresASecond("wind"),
                    WindHeightM = read.Metres("windheight") ?? 2,
                    SunH = read.Hours("sun"),
                    RadiationMjM2 = read.Plain("rad"),
                });
                return (day.Mm.Value, day.Mm.Outside);
            },
        },
        new("growth", "growth potential by temperature, 0 to 1", "", "exp(−½((t − optimum)/spread)²): cool 20 and 5.5 °C, warm 31 and 7 °C, 1 from 31 up", "Gelernter & Stowell 2005, Golf Course Management 73(3):108",
            [Key("t", "mean temperature, °C; made for monthly means"), Key("grass", "cool or warm")], NoPlain)
        {
            ByName = (given, style) => new TypedValues("growth", given, style) is var read
                ? (GrowthPotential.Of(read.Must("t", read.Celsius), read.Word("grass", "cool", "warm") == "warm" ? TurfGrass.Warm : TurfGrass.Cool), null) : default,
        },
        new("gdd", "degree days of a day", "°C·day", "mean: max(0, (tmin + tmax)/2 − base); capped: both cut to [base, cap] first; sine: single sine, horizontal cap", "McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291; Baskerville & Emin 1969, Ecology 50:514",
            [Key("tmin", "lowest temperature, °C"), Key("tmax", "highest temperature, °C"), Key("base", "base temperature, °C"), Key("cap", "upper threshold, °C; none where left out"), Key("method", "mean (where left out), capped or sine")], NoPlain)
        {
            ByName = (given, style) =>
            {
                var read = new TypedValues("gdd", given, style);
                double low = read.Must("tmin", read.Celsius), high = read.Must("tmax", read.Celsius), from = read.Must("base", read.Celsius);
                return (given.ContainsKey("method") ? read.Word("method", "mean", "capped", "sine") : "mean") switch
                {
                    "capped" => (DegreeDays.Capped(low, high, from, read.Celsius("cap")), null),
                    "sine" => (DegreeDays.Sine(low, high, from, read.Celsius("cap")), null),
                    _ => (DegreeDays.Mean(low, high, from), null),
                };
            },
        },
        new("dew", "dew point", "°C", "243.04 g/(17.625 − g), g = ln(rh/100) + 17.625 t/(243.04 + t)", "Alduchov & Eskridge 1996, J. Appl. Meteorol. 35:601",
            [Key("t", "temperature, °C"), Key("rh", "relative humidity, %")], NoPlain)
        { ByName = (given, style) => new TypedValues("dew", given, style) is var read ? Marked(DewPoint.C(read.Must("t", read.Celsius), read.Must("rh", read.Plain))) : default },
        new("dollar-spot", "probability of dollar spot", "", "logit p = −11.4041 + 0.1932 t5 + 0.0894 rh5; treating pays from about 0.20, to be adjusted by site", "Smith et al. 2018, PLoS ONE 13(3):e0194216",
            [Key("t5", "mean temperature of five days, °C"), Key("rh5", "mean humidity of five days, %")], NoPlain)
        { ByName = (given, style) => new TypedValues("dollar-spot", given, style) is var read ? Marked(DollarSpot.Probability(read.Must("t5", read.Celsius), read.Must("rh5", read.Plain))) : default },
        new("colour", "dark green colour index, 0 to 1", "", "((hue − 60)/60 + (1 − saturation) + (1 − brightness))/3", "Karcher & Richardson 2003, Crop Sci. 43:943",
            [Key("r", "red, 0 to 255"), Key("g", "green"), Key("b", "blue")], NoPlain)
        { ByName = (given, style) => new TypedValues("colour", given, style) is var read ? Marked(DarkGreenColour.Index(read.Must("r", read.Plain), read.Must("g", read.Plain), read.Must("b", read.Plain))) : default },
        new("uniformity", "lower-quarter distribution uniformity of irrigation, 0 to 1", "", "mean of the lowest quarter of the cans / mean of all", "Zoldoske, Solomon & Norum 1994",
            [Key("cans", "what each can caught, four at least: 8,9,7,10")], NoPlain)
        { ByName = (given, style) => (CatchCans.LowQuarter(new LengthsAlike([.. new TypedValues("uniformity", given, style).Parts("cans").Select(c => ("cans", c))], style).Values), null) },
        new("speed-slope", "ball roll freed of the slope, in the unit given", "", "2 up down/(up + down)", "Brede 1991, Agron. J. 83:425",
            [Key("up", "roll uphill"), Key("down", "roll downhill, in the same unit")], NoPlain)
        {
            ByName = (given, style) => Rolls(given, style).Values is [var up, var down] ? (GreenSpeed.Corrected(up, down), null) : default,
            UnitOf = (given, style) => Rolls(given, style).Unit,
        },
    ];

    private static LengthsAlike Rolls(IReadOnlyDictionary<string, string> given, WritingStyle style) =>
        new TypedValues("speed-slope", given, style) is var read ? new([("up", read.Text("up")), ("down", read.Text("down"))], style) : null!;

    private static double NoPlain(double[] _) => double.NaN;

    private static (double, string?) Marked(Ranged r) => (r.Value, r.Outside);

    private static ReckoningKey Key(string name, string help) => new(name, help, (_, _) => (double.NaN, null));

    /// <summary>Inputs as typed, read with their units.</summary>
    private sealed class TypedValues(string reckoning, IReadOnlyDictionary<string, string> given, WritingStyle style)
    {
        public double Must(string key, Func<string, double?> read) => read(key) ?? throw Missing(key);

        public double? Celsius(string key) => Read(key, t => Temperature.TryParse(t, style, TemperatureUnit.Celsius, out var v, out var f) ? (v.Celsius, null) : (0, f));

        public double? Hours(string key) => Read(key, t => Duration.TryParse(t, style, DurationUnit.Hour, out var v, out var f) ? (v.Hours, null) : (0, f));

        public double? Metres(string key) => Read(key, t => Length.TryParse(t, style, LengthUnit.M, out var v, out var f) ? (v.Mm / 1000, null) : (0, f));

        public double? MetresASecond(string key) => Read(key, t => Speed.TryParse(t, style, SpeedUnit.MetrePerSecond, out var v, out var f) ? (v.MetresPerSecond, null) : (0, f));

        public double? Plain(string key) => Read(key, t => Number.TryParse(t.TrimEnd('%', ' ', '°'), style, NumberUnit.One, out var v, out var f) ? (v.Value, null) : (0, f));

        public DateOnly Day(string key)
        {
            if (!given.TryGetValue(key, out var text)) throw Missing(key);
            return DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : throw CliFault.Refused($"{key}: \"{Spelling.Clip(text)}\" is no day.", "Write it like 2026-07-06.");
        }

        public string Word(string key, params string[] words)
        {
            if (!given.TryGetValue(key, out var text)) throw Missing(key);
            return words.FirstOrDefault(w => w == text.Trim()) ?? throw CliFault.Refused($"{key}: \"{Spelling.Clip(text)}\" is none of {string.Join(", ", words)}.", $"Write {key}={words[0]}.");
        }

        public string Text(string key) => given.TryGetValue(key, out var text) ? text : throw Missing(key);

        public string[] Parts(string key) => Text(key).Split(style.DecimalSign == ',' ? ';' : ',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

        private double? Read(string key, Func<string, (double Value, ParseFault? Fault)> parse)
        {
            if (!given.TryGetValue(key, out var text)) return null;
            var (value, fault) = parse(text);
            return fault is null ? value : throw CliFault.Refused($"{key}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
        }

        private CliFault Missing(string key) => CliFault.Refused($"{reckoning} needs {key}: {All.First(r => r.Name == reckoning).Keys.First(k => k.Name == key).Help}.", $"Write {key}=….");
    }
}
