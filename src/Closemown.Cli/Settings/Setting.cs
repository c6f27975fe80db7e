using System.CommandLine;
using System.Globalization;

namespace Closemown.Cli;

/// <summary>One thing a person may set, with the four places it can come from.</summary>
/// <param name="Name">Its name in the settings file.</param>
/// <param name="Help">What it says.</param>
/// <param name="May">What it may be, in words.</param>
/// <param name="Default">What holds where nobody said otherwise.</param>
/// <param name="Variable">The environment variable.</param>
/// <param name="Option">The option; null where there is none.</param>
/// <param name="Normal">The value in its one form, or null where it is none.</param>
internal sealed record Setting(string Name, string Help, string May, string Default, string Variable, Option<string>? Option, Func<string, string?> Normal)
{
    public static Setting Words { get; } = new("words", "words of the trade", "us or uk", "us", "CLOSEMOWN_WORDS", CommonOptions.Words, OneOf("us", "uk"));

    public static Setting Gap { get; } = new("gap", "unit of the gap", "um, thou or hundredth (of a mm)", "um", "CLOSEMOWN_GAP", CommonOptions.Gap, OneOf("um", "thou", "hundredth"));

    public static Setting Height { get; } = new("height", "unit of heights", "mm, inch or fraction", "mm", "CLOSEMOWN_HEIGHT", CommonOptions.Height, OneOf("mm", "inch", "fraction"));

    public static Setting Decimal { get; } = new("decimal", "decimal sign", "point (.) or comma (,)", "point", "CLOSEMOWN_DECIMAL", CommonOptions.Decimal,
        text => text switch { "." or "point" => "point", "," or "comma" => "comma", _ => null });

    public static Setting Price { get; } = new("priceOfMinute", "what a minute of yours is worth", "a number above 0, at most 100: more saves minutes, less saves the cut", "1", "CLOSEMOWN_PRICE_OF_MINUTE", NextCommand.Price,
        text => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var p) && p is > 0 and <= 100 ? p.ToString("R", CultureInfo.InvariantCulture) : null);

    public static Setting WeatherFetch { get; } = new("weatherFetch", "whether weather may be fetched from a public service", "off or on (on sends the area's latitude and longitude, to two decimals)", "off", "CLOSEMOWN_WEATHER_FETCH", null, OneOf("off", "on"));

    public static Setting WeatherUrl { get; } = new("weatherUrl", "address of that service", "an http or https address that answers in Open-Meteo's documented form", "https://api.open-meteo.com/v1/forecast", "CLOSEMOWN_WEATHER_URL", null,
        text => Uri.TryCreate(text.Trim(), UriKind.Absolute, out var u) && u.Scheme is "http" or "https" ? text.Trim() : null);

    public static Setting WeatherSeconds { get; } = new("weatherSeconds", "how long one try to fetch weather may take", "seconds, 0.1 to 120", "10", "CLOSEMOWN_WEATHER_SECONDS", null,
        text => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var s) && s is >= 0.1 and <= 120 ? s.ToString("R", CultureInfo.InvariantCulture) : null);

    public static Setting RequestBytes { get; } = new("requestBytes", "the most bytes that serve takes in one request", "a whole number, 1000 to 1000000000", "4000000", "CLOSEMOWN_REQUEST_BYTES", null, Whole(1000, 1_000_000_000));

    public static Setting RequestLines { get; } = new("requestLines", "the most lines of entries that serve takes in one request", "a whole number, 1 to 1000000", "2000", "CLOSEMOWN_REQUEST_LINES", null, Whole(1, 1_000_000));

    public static Setting RequestPixels { get; } = new("requestPixels", "the most pixels of a picture that serve will take (no picture is taken yet)", "a whole number, 10000 to 1000000000", "24000000", "CLOSEMOWN_REQUEST_PIXELS", null, Whole(10_000, 1_000_000_000));

    public static Setting RequestsPerSecond { get; } = new("requestsPerSecond", "how many requests a second serve takes from one device; twice as many at once", "a whole number, 1 to 100000", "50", "CLOSEMOWN_REQUESTS_PER_SECOND", null, Whole(1, 100_000));

    public static Setting Book { get; } = new("book", "the book's file", "a full path", "", "CLOSEMOWN_BOOK", CommonOptions.Book, text => text.Length > 0 ? text : null);

    public static IReadOnlyList<Setting> All { get; } = [Words, Gap, Height, Decimal, Price, WeatherFetch, WeatherUrl, WeatherSeconds, RequestBytes, RequestLines, RequestPixels, RequestsPerSecond, Book];

    private static Func<string, string?> Whole(long least, long most) => text =>
        long.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= least && n <= most ? n.ToString(CultureInfo.InvariantCulture) : null;

    private static Func<string, string?> OneOf(params string[] words) => text =>
    {
        var plain = text.Trim();
        if (plain == "µm") plain = "um";
        return words.FirstOrDefault(w => w.Equals(plain, StringComparison.OrdinalIgnoreCase));
    };
}

/// <summary>A setting as it holds now.</summary>
internal sealed record SettingHeld(Setting Setting, string Value, string Source)
{
    /// <summary>The source of what nobody set.</summary>
    public const string ByDefault = "default";
}
