using System.CommandLine;
using System.Globalization;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>What the person has set, and where each came from: option, then environment, then file, then default.</summary>
internal sealed class Preferences
{
    private readonly List<SettingHeld> held = [];

    private Preferences(SettingsFile file) => File = file;

    public SettingsFile File { get; }

    public IReadOnlyList<SettingHeld> Held => held;

    public WritingStyle Style { get; private init; } = WritingStyle.Plain;

    public double PriceOfMinute { get; private init; } = 1;

    /// <summary>Whether weather may be fetched.</summary>
    public bool WeatherFetch { get; private init; }

    /// <summary>Where from.</summary>
    public Uri WeatherUrl { get; private init; } = new(Setting.WeatherUrl.Default);

    /// <summary>How long one try may take.</summary>
    public TimeSpan WeatherTry { get; private init; }

    /// <summary>A setting's value, as it is written.</summary>
    public string Value(Setting setting) => held.First(h => h.Setting == setting).Value;

    /// <summary>The book's path in the settings file.</summary>
    public string? Book => File[Setting.Book.Name];

    /// <summary>Gathers them.</summary>
    /// <exception cref="CliFault">One has a value that it cannot have.</exception>
    public static Preferences Of(ParseResult parsed, Func<string, string?> variable)
    {
        var file = SettingsFile.Read(variable);
        var all = Setting.All.Select(s => Find(s, parsed, variable, file)).ToList();
        string Value(Setting s) => all.First(h => h.Setting == s).Value;
        SettingHeld Held(Setting s) => all.First(h => h.Setting == s);
        // Who chose US words, and not millimetres, has them whole: feet, pounds and °F go with them.
        var american = Value(Setting.Words) == "us" && (Value(Setting.Height) != "mm" || (Held(Setting.Words).Source != SettingHeld.ByDefault && Held(Setting.Height).Source == SettingHeld.ByDefault));
        var preferences = new Preferences(file)
        {
            Style = new WritingStyle
            {
                Turf = american ? TurfUnits.American : TurfUnits.Metric,
                Words = Value(Setting.Words) == "uk" ? Wording.UK : Wording.US,
                Gap = Value(Setting.Gap) switch { "thou" => GapUnit.Thou, "hundredth" => GapUnit.HundredthMm, _ => GapUnit.Micrometre },
                Height = Value(Setting.Height) switch { "inch" => HeightUnit.InchDecimal, "fraction" => HeightUnit.InchFraction, _ => HeightUnit.Mm },
                DecimalSign = Value(Setting.Decimal) == "comma" ? ',' : '.',
            },
            PriceOfMinute = double.Parse(Value(Setting.Price), CultureInfo.InvariantCulture),
            WeatherFetch = Value(Setting.WeatherFetch) == "on",
            WeatherUrl = new(Value(Setting.WeatherUrl)),
            WeatherTry = TimeSpan.FromSeconds(double.Parse(Value(Setting.WeatherSeconds), CultureInfo.InvariantCulture)),
        };
        preferences.held.AddRange(all);
        return preferences;
    }

    private static SettingHeld Find(Setting s, ParseResult parsed, Func<string, string?> variable, SettingsFile file)
    {
        foreach (var (value, source) in new[] { (s.Option is null ? null : parsed.GetValue(s.Option), s.Option?.Name ?? ""), (variable(s.Variable), s.Variable), (file[s.Name], "settings file") })
        {
            if (string.IsNullOrWhiteSpace(value)) continue;
            return new(s, s.Normal(value) ?? throw CliFault.Refused($"\"{value}\" (from {source}) cannot be the {s.Help}.", $"{s.Name} may be {s.May}."), source);
        }
        return new(s, s.Default, SettingHeld.ByDefault);
    }
}
