namespace Closemown.Bench.Mutating;

/// <summary>One small change of the sources that a test should notice.</summary>
/// <param name="Id">Its number, from 1.</param>
/// <param name="File">The file, from the project's folder.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="Was">What stands there.</param>
/// <param name="Becomes">What stands there instead while the mutant is alive.</param>
internal sealed record Mutant(int Id, string File, int Line, string Was, string Becomes)
{
    public override string ToString() => $"{File}:{Line}: {Short(Was)} -> {Short(Becomes)}";

    private static string Short(string text)
    {
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 90 ? line : line[..87] + "...";
    }
}
