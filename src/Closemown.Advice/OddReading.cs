using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>An odd reading is read again; after an odd swath, which cannot be, the nip is looked at where it looked odd.</summary>
internal static class OddReading
{
    public static AdviceStep? Again(BenchCase c)
    {
        if (c.Memory.Unusual is not { } odd || c.Memory.Heavy) return null;
        var entry = odd.Entry;
        if (entry.Is(MeasureEntry.Kind)) return null;
        var swath = entry.Is(SwathEntry.Kind);
        var at = Enumerable.Range(0, 3).Where(s => entry.Has(StationFields.Words[s])).ToArray();
        var why = $"The last {(swath ? "look at the mown strip" : "reading")} is not like this mower (about 1 in {Math.Max(2, Math.Round(1 / Math.Max(odd.Surprise, 1e-6))):0}): "
            + (swath ? "see whether the strip still cuts before anything is turned." : "read it again before anything is turned.");
        return c.Ask(swath ? c.OwnsStrip ? PaperCutEntry.Name : ContactEntry.Name : entry.Kind.Name, at, [why, .. Explained(c, entry)]);
    }

    private static string[] Explained(BenchCase c, Entry odd) =>
        c.Track.Unusual.Count > 0 && c.Track.Unusual[^1].Entry.Id == odd.Id && ExplanationSpeech.Sentence(c.Track.Unusual[^1].Explanations) is { } said ? [said] : [];
}
