namespace Closemown.Fuzzing;

/// <summary>Fuzzing without knowledge of what was reached: so many mutations of the seeds, the same for the same seed.</summary>
public static class PlainRun
{
    /// <summary>Runs the seeds and mutations of them.</summary>
    /// <param name="target">What is fuzzed.</param>
    /// <param name="seed">The seed of chance.</param>
    /// <param name="runs">How many mutations.</param>
    /// <returns>The crashes, one of each sort, made small.</returns>
    public static IReadOnlyList<Crash> Go(FuzzTarget target, int seed, int runs)
    {
        ArgumentNullException.ThrowIfNull(target);
        var mutator = new Mutator(new Random(seed), target.Words, target.Longest);
        var crashes = new Dictionary<string, Crash>(StringComparer.Ordinal);
        void Try(byte[] input)
        {
            if (Crash.Of(target, input) is { } crash && !crashes.ContainsKey(crash.Signature)) crashes[crash.Signature] = crash.Smaller(target);
        }
        foreach (var good in target.Seeds) Try(good);
        for (var n = 0; n < runs; n++) Try(mutator.Next(target.Seeds));
        return [.. crashes.Values];
    }
}
