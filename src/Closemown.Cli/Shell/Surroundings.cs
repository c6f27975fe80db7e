namespace Closemown.Cli;

/// <summary>What a command may know of the world around it: handed in, so that nothing below reaches for the clock or the console.</summary>
internal sealed record Surroundings(Screen Screen, TimeProvider Time, Func<string, string?> Variable, Func<Stream> Input)
{
    public static Surroundings OfThisProcess(TimeProvider time) =>
        new(Screen.OfThisProcess(Environment.GetEnvironmentVariable), time, Environment.GetEnvironmentVariable, Console.OpenStandardInput);
}
