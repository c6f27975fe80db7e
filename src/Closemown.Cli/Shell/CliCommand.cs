using System.CommandLine;

namespace Closemown.Cli;

/// <summary>A command with the examples that its help begins with.</summary>
internal abstract class CliCommand(string name, string description) : Command(name, description)
{
    /// <summary>What is typed, and what it does.</summary>
    public IReadOnlyList<(string Typed, string Does)> Examples { get; init; } = [];

    /// <summary>Further paragraphs of the help.</summary>
    public IReadOnlyList<string> Details { get; init; } = [];

    /// <summary>Does what the command is for.</summary>
    /// <returns>The exit code.</returns>
    public abstract int Do(Call call);
}

/// <summary>A command that only holds others.</summary>
internal abstract class CommandGroup(string name, string description) : CliCommand(name, description)
{
    public override int Do(Call call) => throw CliFault.Usage($"\"{Name}\" needs a second word.", $"Write closemown {Name} {string.Join(" | ", Subcommands.Select(s => s.Name))}.");
}
