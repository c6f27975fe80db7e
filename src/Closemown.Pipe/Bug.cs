namespace Closemown.Pipe;

/// <summary>A fault of the program itself, met while something was answered.</summary>
/// <param name="Asked">What was asked, in short, as <see cref="BugFault.Of"/> takes it.</param>
/// <param name="Exception">What was thrown.</param>
public sealed record Bug(string Asked, Exception Exception)
{
    /// <summary>The line for the log; it holds nothing that a person typed beyond the name of what was asked.</summary>
    public string LogLine => $"bug while answering {Asked}: {BugFault.Trace(Exception)}";
}
