using System.CommandLine;
using System.CommandLine.Help;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Reads the command line, runs the command, and turns what went wrong into words and an exit code.</summary>
internal static class CommandLine
{
    private static readonly (string Name, Func<CliCommand> Make)[] Commands =
    [
        ("demo", () => new DemoCommand()), ("new", () => new NewCommand()), ("add", () => new AddCommand()), ("undo", () => new UndoCommand()), ("next", () => new NextCommand()),
        ("steel", () => new SteelCommand()), ("height", () => new HeightCommand()), ("turf", () => new TurfCommand()), ("plan", () => new PlanCommand()), ("step-down", () => new StepDownCommand()), ("study", () => new StudyCommand()), ("score", () => new ScoreCommand()), ("why", () => new WhyCommand()), ("today", () => new TodayCommand()), ("book", () => new BookCommand()),
        ("reckon", () => new ReckonCommand()), ("settings", () => new SettingsCommand()), ("check-up", () => new CheckUpCommand()), ("pipe", () => new PipeCommand()), ("serve", () => new ServeCommand()), ("devices", () => new DevicesCommand()), ("docs", () => new DocsCommand()),
    ];

    /// <summary>The tree of commands: the one named first alone, as making the others takes longer than many a command; all of them where none is.</summary>
    public static RootCommand Tree(Surroundings around, string? first)
    {
        var root = new RootCommand("Looks after an old reel mower and the short turf it cuts: tells the next step at the bench, how sure that is, and why.");
        root.Directives.Clear();
        foreach (var option in CommonOptions.Everywhere) root.Options.Add(option);
        root.Options.OfType<HelpOption>().Single().Action = new HelpText(around);
        var named = Array.Find(Commands, c => c.Name == first);
        foreach (var (_, make) in named.Make is null ? Commands : [named]) Hang(root, make(), around);
        return root;
    }

    public static int Run(string[] args, Surroundings around)
    {
        var screen = around.Screen;
        try
        {
            var parsed = Tree(around, args.FirstOrDefault()).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
            if (args.Length == 0)
            {
                foreach (var line in HelpText.Lines(parsed.CommandResult.Command, screen.Width)) screen.Line(line);
                screen.Out.Flush();
                return ExitCodes.Done;
            }
            if (parsed.Action is not HelpText && parsed.Errors.Count > 0) throw UsageFault.Of(parsed);
            if (parsed.Action is null) throw UsageFault.Of(parsed);
            var exit = parsed.Invoke(new InvocationConfiguration { Output = screen.Out, Error = screen.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
            screen.Out.Flush();
            return exit;
        }
        catch (CliFault fault)
        {
            return Told(around, args, fault);
        }
        catch (TypedFault e)
        {
            return Told(around, args, CliFault.Refused(e.Message, e.Remedy));
        }
        catch (BookException e)
        {
            return Told(around, args, CliFault.Refused(e.Message, e.Remedy));
        }
        catch (IOException e) when (e is not FileNotFoundException and not DirectoryNotFoundException)
        {
            return Told(around, args, CliFault.Refused($"Reading or writing failed: {e.Message}.", "Check the file and the disk, then try again."));
        }
        catch (Exception e) when (BugFault.IsOne(e))
        {
            var bug = new Bug($"closemown {args.FirstOrDefault(a => Array.Exists(Commands, c => c.Name == a))}".TrimEnd(), e);
            screen.Tell(bug);
            var fault = BugFault.Of(bug.Asked);
            return Told(around, args, new CliFault(ExitCodes.Bug, fault.Message, fault.Remedy) { Json = Conversation.Refused([fault]) });
        }
    }

    private static void Hang(Command parent, CliCommand command, Surroundings around)
    {
        Prepare(command, around);
        parent.Subcommands.Add(command);
    }

    private static void Prepare(CliCommand command, Surroundings around)
    {
        command.SetAction(parsed => command.Do(new Call(parsed, around)));
        foreach (var below in command.Subcommands.OfType<CliCommand>()) Prepare(below, around);
    }

    private static int Told(Surroundings around, string[] args, CliFault fault)
    {
        var screen = around.Screen;
        try
        {
            if (args.Contains("--json")) screen.Line(Conversation.Text(fault.Json ?? Conversation.Refused([new("refused", "", fault.Message, fault.Remedy)])));
            screen.Out.Flush();
        }
        catch (IOException)
        {
            return fault.Exit;                     // nobody reads any more
        }
        foreach (var line in Wrap.Text($"closemown: {fault.Message}", screen.ErrorIsTerminal ? screen.Width : int.MaxValue)) screen.Error.Write(line + "\n");
        if (fault.Remedy.Length > 0) screen.Error.Write($"  {fault.Remedy.Replace("\n", "\n  ", StringComparison.Ordinal)}\n");
        return fault.Exit;
    }
}
