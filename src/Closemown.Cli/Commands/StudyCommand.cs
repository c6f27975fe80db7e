namespace Closemown.Cli;

/// <summary>Studies of the person's own tools.</summary>
internal sealed class StudyCommand : CommandGroup
{
    public StudyCommand() : base("study", "guided studies: how good is the gauge in your hands")
    {
        Examples = [("closemown study gauge spring", "what to read next, and what the readings say so far"), ("closemown study gauge spring 5.02 5.11", "enter a reading of that study")];
        Subcommands.Add(new StudyGaugeCommand());
    }
}
