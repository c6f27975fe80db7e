using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>The sitting at the bench as it is at the time of the question: one that ended six hours ago says nothing any more.</summary>
public sealed class SittingNow
{
    private static readonly string[] Nip = ["paper-cut", "paper-drag", "contact", "torch", "feeler"];
    private readonly BenchMemory memory;

    /// <summary>Looks at a unit's memory at a time.</summary>
    public SittingNow(BenchMemory memory, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(memory);
        this.memory = memory;
        Open = memory.AtBench(now);
    }

    /// <summary>Whether a sitting is open.</summary>
    public bool Open { get; }

    /// <summary>Its entries so far; none where it is not open.</summary>
    public IReadOnlyList<Entry> Entries => Open ? memory.Sitting : [];

    /// <summary>Whether the nip was checked in it.</summary>
    public bool Checked => Has(Nip);

    /// <summary>Rounds lapped in it.</summary>
    public int Laps => Entries.Count(e => e.Is(LapEntry.Kind));

    /// <summary>Whether it has an entry of one of these kinds.</summary>
    public bool Has(params ReadOnlySpan<string> kinds)
    {
        foreach (var e in Entries)
        {
            if (kinds.Contains(e.Kind.Name)) return true;
        }
        return false;
    }

    /// <summary>Whether an entry of a kind was made in it, and none of the others after that.</summary>
    public bool Since(string kind, params string[] others) => Entries.LastOrDefault(e => e.Kind.Name == kind || others.Contains(e.Kind.Name))?.Kind.Name == kind;

    /// <summary>How often a check was made at a station since the last change.</summary>
    public int Done(string kind, int station) => Open ? memory.DoneSinceChange.GetValueOrDefault($"{kind} {Stations.All[station]}") : 0;
}
