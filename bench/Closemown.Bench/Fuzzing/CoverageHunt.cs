using System.Diagnostics;
using Closemown.Fuzzing;

namespace Closemown.Bench.Fuzzing;

/// <summary>Mutates what it knows, and keeps each input that takes a branch, or takes one so often, as none before it.</summary>
internal sealed class CoverageHunt(FuzzTarget target, EdgeMap map, InputAtHand atHand, int seed)
{
    private const int MostLetters = 4_000_000;

    private readonly Mutator mutator = new(new Random(seed), target.Words, target.Longest);
    private readonly Dictionary<string, Crash> crashes = new(StringComparer.Ordinal);
    private readonly List<byte[]> known = [];
    private long letters;

    /// <summary>Inputs run.</summary>
    public long Runs { get; private set; }

    /// <summary>Inputs kept to be mutated.</summary>
    public IReadOnlyList<byte[]> Known => known;

    /// <summary>One crash of each sort, made small.</summary>
    public IReadOnlyCollection<Crash> Crashes => crashes.Values;

    /// <summary>Runs the seeds, all of which are kept.</summary>
    public void Begin()
    {
        foreach (var good in target.Seeds)
        {
            Try(good);
            known.Add(good);
        }
    }

    /// <summary>Goes on for some time.</summary>
    public void Go(TimeSpan time)
    {
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < time)
        {
            var input = mutator.Next(known);
            // What crashed is not mutated further: it would crash again.
            if (!Try(input) || letters > MostLetters) continue;
            known.Add(input);
            letters += input.Length;
        }
    }

    /// <summary>Runs an input; whether it reached something new.</summary>
    private bool Try(byte[] input)
    {
        Runs++;
        map.Clear();
        atHand.Take(input);
        var crash = Crash.Of(target, input);
        atHand.Done();
        var fresh = map.Take();
        if (crash is null) return fresh;
        if (!crashes.ContainsKey(crash.Signature)) crashes[crash.Signature] = crash.Smaller(target);
        return false;
    }
}
