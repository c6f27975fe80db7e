using System.CommandLine;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Says what was typed wrongly, with the nearest right word.</summary>
internal static class UsageFault
{
    public static CliFault Of(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var path = HelpText.PathOf(command);
        if (parsed.UnmatchedTokens.Count > 0)
        {
            var odd = parsed.UnmatchedTokens[0];
            var known = odd.StartsWith('-') ? HelpText.OptionsOf(command).SelectMany(o => o.Aliases.Prepend(o.Name)) : command.Subcommands.Where(s => !s.Hidden).Select(s => s.Name);
            var near = Spelling.Nearest(odd, known);
            var what = odd.StartsWith('-') ? "option" : command.Subcommands.Count > 0 ? "command" : "word";
            return CliFault.Usage($"{path} knows no {what} \"{Spelling.Clip(odd)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"{path} --help shows what it knows.");
        }
        if (command.Subcommands.Count > 0 && command is not CliCommand { Subcommands.Count: 0 } && parsed.Errors.All(e => e.SymbolResult?.GetType().Name == "CommandResult"))
            return CliFault.Usage($"{path} needs a further word.", $"One of {string.Join(", ", command.Subcommands.Where(s => !s.Hidden).Select(s => s.Name))}; {path} --help says what each does.");
        return CliFault.Usage(parsed.Errors.Count > 0 ? parsed.Errors[0].Message : $"{path} cannot be run as typed.", $"{path} --help shows how it is written.");
    }
}
