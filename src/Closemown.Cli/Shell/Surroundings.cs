namespace Closemown.Cli;

/// <summary>What a command may know of the world around it: handed in, so that nothing below reaches for the clock or the console.</summary>
internal sealed record Surroundings(Screen Screen, TimeProvider Time, Func<string, string?> Variable, Func<Stream> Input)
{
    /// <summary>How the person called this program: commands to type next are said that way.</summary>
    public string Called => Variable("CLOSEMOWN_CALLED") is { Length: > 0 } called ? called : "closemown";

    public static Surroundings OfThisProcess(TimeProvider time) =>
        new(Screen.OfThisProcess(Environment.GetEnvironmentVariable), time, Environment.GetEnvironmentVariable, Console.OpenStandardInput);
}
