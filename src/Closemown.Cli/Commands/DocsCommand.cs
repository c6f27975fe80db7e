using System.CommandLine;

namespace Closemown.Cli;

/// <summary>Writes the command reference; hidden, for those who work on the program.</summary>
internal sealed class DocsCommand : CliCommand
{
    private const int Width = 100;

    public DocsCommand() : base("docs", "the command reference, made of the help texts") => Hidden = true;

    public override int Do(Call call)
    {
        var screen = call.Screen;
        screen.Line("# Commands");
        screen.Line();
        screen.Line("Made by `closemown docs`; a test fails when this file is stale.");
        Section(screen, CommandLine.Tree(call.Around, first: null));
        return ExitCodes.Done;
    }

    private static void Section(Screen screen, Command command)
    {
        screen.Line();
        screen.Line($"## {HelpText.PathOf(command)}");
        screen.Line("```text");
        foreach (var line in HelpText.Lines(command, Width)) screen.Line(line);
        screen.Line("```");
        foreach (var below in command.Subcommands.Where(c => !c.Hidden)) Section(screen, below);
    }
}
