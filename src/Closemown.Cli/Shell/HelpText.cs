using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Closemown.Cli;

/// <summary>Help: examples first, then what may be written. The command reference is made of the same lines.</summary>
internal sealed class HelpText(Surroundings around) : SynchronousCommandLineAction
{
    private static readonly (string Typed, string Does)[] First =
    [
        ("closemown demo", "see it at work on an invented mower"),
        ("closemown new --unit mower --blades 10", "start your own book"),
        ("closemown add paper-cut cuts cuts folds", "enter a reading: left, centre, right"),
        ("closemown next", "what to do now, how sure, and why"),
    ];

    public override int Invoke(ParseResult parseResult)
    {
        var command = parseResult.CommandResult.Command;
        var kind = command is AddCommand ? parseResult.GetValue(AddCommand.Kind) : null;
        foreach (var line in kind is not null && KindNames.Find(kind) is var (known, _) ? KindHelp.Lines(known, around.Screen.Width) : Lines(command, around.Screen.Width)) around.Screen.Line(line);
        return ExitCodes.Done;
    }

    /// <summary>The help of a command.</summary>
    public static IEnumerable<string> Lines(Command command, int width)
    {
        var own = command as CliCommand;
        foreach (var line in Wrap.Text(Sentence(command.Description ?? ""), width)) yield return line;
        var examples = own?.Examples ?? First;
        if (examples.Count > 0)
        {
            yield return "";
            yield return "Examples";
            foreach (var line in Table([.. examples.Select(e => (e.Typed, e.Does))], width, 44)) yield return line;
        }
        yield return "";
        yield return "Written";
        yield return "  " + Usage(command);
        foreach (var section in Sections(command, width)) yield return section;
        foreach (var detail in own?.Details ?? [])
        {
            yield return "";
            foreach (var line in Wrap.Text(detail, width)) yield return line;
        }
        yield return "";
        foreach (var line in Wrap.Text("Exit codes: " + ExitCodes.InWords, width)) yield return line;
    }

    /// <summary>What is typed to reach a command.</summary>
    public static string PathOf(Command command)
    {
        var names = new List<string>();
        for (Symbol? s = command; s is not null; s = s.Parents.FirstOrDefault()) names.Add(s is RootCommand ? "closemown" : s.Name);
        names.Reverse();
        return string.Join(' ', names);
    }

    /// <summary>The options a command takes, those of its parents included.</summary>
    public static IEnumerable<Option> OptionsOf(Command command)
    {
        foreach (var o in command.Options.Where(o => !o.Hidden)) yield return o;
        if (command is RootCommand) yield break;
        foreach (var o in CommonOptions.Everywhere) yield return o;
    }

    private static IEnumerable<string> Sections(Command command, int width)
    {
        var subcommands = command.Subcommands.Where(c => !c.Hidden).Select(c => (c.Name, c.Description ?? "")).ToList();
        var arguments = command.Arguments.Where(a => !a.Hidden).Select(a => (a.HelpName ?? a.Name.ToUpperInvariant(), a.Description ?? "")).ToList();
        var options = command.Options.Where(o => !o.Hidden && !CommonOptions.Everywhere.Contains(o)).Select(Row).ToList();
        var common = CommonOptions.Everywhere.Select(Row).ToList();
        foreach (var (title, rows) in new[] { ("Commands", subcommands), ("Words", arguments), ("Options", options), ("Options of every command", common) })
        {
            if (rows.Count == 0) continue;
            yield return "";
            yield return title;
            foreach (var line in Table(rows, width, 30)) yield return line;
        }
    }

    private static (string, string) Row(Option o)
    {
        var names = string.Join(", ", o.Aliases.Prepend(o.Name).Distinct().OrderByDescending(n => n.Length).Where(n => n.StartsWith("--", StringComparison.Ordinal)));
        return ($"{names}{(o.HelpName is { } h ? " " + h : "")}", o is HelpOption ? "this help" : o is VersionOption ? "the version" : o.Description ?? "");
    }

    private static string Usage(Command command)
    {
        var parts = new List<string> { PathOf(command) };
        if (command.Subcommands.Count > 0) parts.Add("COMMAND");
        parts.AddRange(command.Arguments.Where(a => !a.Hidden).Select(a =>
        {
            var name = a.HelpName ?? a.Name.ToUpperInvariant();
            return a.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;
        }));
        parts.Add("[options]");
        return string.Join(' ', parts);
    }

    private static IEnumerable<string> Table(IReadOnlyList<(string Left, string Right)> rows, int width, int most)
    {
        var column = Math.Min(most, rows.Max(r => r.Left.Length)) + 4;
        foreach (var (left, right) in rows)
        {
            var lines = Wrap.Text(right, Math.Max(20, width - column));
            if (left.Length + 4 > column)
            {
                yield return "  " + left;
                foreach (var line in lines) yield return new string(' ', column) + line;
                continue;
            }
            for (var i = 0; i < lines.Count; i++) yield return (i == 0 ? ("  " + left).PadRight(column) : new string(' ', column)) + lines[i];
            if (lines.Count == 0) yield return "  " + left;
        }
    }

    private static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text.EndsWith('.') ? "" : ".");
}
