using System.Reflection;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Pipe;
using Microsoft.Data.Sqlite;

namespace Closemown.Cli;

/// <summary>How this installation is doing, fit to be shown to others: no notes, no names, no positions.</summary>
internal sealed class CheckUpCommand : CliCommand
{
    public CheckUpCommand() : base("check-up", "versions, where the book is and whether it is whole, and the settings: without names, notes or positions")
    {
        Examples = [("closemown check-up", "for a report to others"), ("closemown check-up --json", "for a program")];
    }

    public override int Do(Call call)
    {
        var home = call.Around.Variable("HOME") ?? call.Around.Variable("USERPROFILE");
        string Tilde(string text) => string.IsNullOrEmpty(home) || home == "/" ? text : text.Replace(home, "~", StringComparison.Ordinal);
        var where = call.Location;
        var (health, problems) = Health(where.Path);
        var facts = new List<(string Name, string Value)>
        {
            ("program", Assembly.GetExecutingAssembly().GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "?"),
            ("runtime", RuntimeInformation.FrameworkDescription),
            ("system", $"{RuntimeInformation.OSDescription}, {RuntimeInformation.OSArchitecture}"),
            ("sqlite", SqliteVersion()),
            ("book", Tilde(where.Explanation)),
            ("health", Tilde(health)),
            ("settings file", Tilde(call.Preferences.File.Path ?? "none") + (call.Preferences.File.Exists ? "" : " (not there)")),
        };
        facts.AddRange(call.Preferences.Held.Where(h => h.Setting != Setting.Book).Select(h => (h.Setting.Name, $"{h.Value} ({h.Source})")));
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject(facts.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Name, f.Value)).Prepend(new("ok", !problems)))));
        else foreach (var line in facts.SelectMany(f => Wrap.Beside(f.Name, f.Value, call.Screen.Width, 16))) call.Screen.Line(line);
        return problems ? ExitCodes.Refused : ExitCodes.Done;
    }

    private static (string Text, bool Problems) Health(string path)
    {
        if (path == BookFile.InMemory) return ("kept in memory only", false);
        if (!File.Exists(path)) return ("not there yet", false);
        try
        {
            var report = Verification.Run(path);
            return report.Ok ? ($"whole: {report.Entries} entries, {report.Weather} of weather, format {report.Version}", false)
                : ($"{report.Problems.Count} problems: {report.Problems[0]}", true);
        }
        catch (BookException e)
        {
            return ($"{e.Message} {e.Remedy}", true);
        }
    }

    private static string SqliteVersion()
    {
        using var connection = new SqliteConnection("Data Source=:memory:");
        connection.Open();
        return connection.ServerVersion;
    }
}
