using System.CommandLine;
using Closemown.Cli;
using Closemown.Typing;

namespace Closemown.Fuzzing;

/// <summary>The file with what a person has set.</summary>
internal sealed class SettingsTarget() : FuzzTarget("settings")
{
    private static readonly Surroundings Nowhere = new(new Screen(TextWriter.Null, TextWriter.Null), TimeProvider.System, _ => null, () => Stream.Null);
    private static readonly ParseResult Parsed = CommandLine.Tree(Nowhere, "next").Parse(["next"]);

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(
    [
        """{"words":"uk","gap":"thou","height":"fraction","decimal":"comma","priceOfMinute":"2.5","weatherFetch":"on","weatherUrl":"https://a.example/v1","weatherSeconds":5,"requestBytes":1000000,"requestLines":10,"requestsPerSecond":"50","book":"/tmp/x"}""",
        "{}", """{"gap":"µm","decimal":","}""",
    ]);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(Setting.All.SelectMany(s => (string[])[s.Name, s.Default]).Concat(["http://", "file:///etc", "on", "off", "us", "point", "\ufeff"]));

    public override void Run(byte[] input)
    {
        var file = Path.Combine(Path.GetTempPath(), $"closemown-fuzz-{Environment.ProcessId}-{Environment.CurrentManagedThreadId}.json");
        try
        {
            File.WriteAllBytes(file, input);
            Read(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static void Read(string path)
    {
        string? Variable(string name) => name == SettingsFile.Variable ? path : null;
        try
        {
            var preferences = Preferences.Of(Parsed, Variable);
            foreach (var held in preferences.Held)
                Laws.Must(held.Value.Length == 0 || held.Setting.Normal(held.Value) == held.Value, "a setting's one form stays as it is", $"{held.Setting.Name} {held.Value}");
            Laws.Must(preferences.PriceOfMinute is > 0 and <= 100 && preferences.WeatherTry.TotalSeconds is >= 0.1 and <= 120, "a setting is in its range", preferences.PriceOfMinute.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
        }
        catch (TypedFault fault)
        {
            Laws.Told(fault.Message, fault.Remedy);
        }
    }
}
