using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Checks that could be made before deciding: one kind at some stations, or two kinds together.</summary>
/// <param name="Kind">The kind to ask for first.</param>
/// <param name="At">The stations, 0–2.</param>
/// <param name="With">A second kind planned together with the first; null for none.</param>
/// <param name="WithAt">Its stations.</param>
internal sealed record CheckOffer(string Kind, int[] At, string? With = null, int[]? WithAt = null)
{
    public double Minutes(AdviceSettings s) => s.CheckMinutes(Kind, At.Length) + (With is null ? 0 : s.CheckMinutes(With, WithAt!.Length));

    public string Say() => $"{Kind} {string.Join(", ", At.Select(s => Stations.All[s]))}{(With is null ? "" : $" and {With} {string.Join(", ", WithAt!.Select(s => Stations.All[s]))}")}";

    public IEnumerable<Check> Checks(UnitTrack track) =>
        At.Select(s => Steel.Checks.Of(Kind, s, track.Unit, track.Strip))
            .Concat(With is null ? [] : WithAt!.Select(s => Steel.Checks.Of(With, s, track.Unit, track.Strip)));

    /// <summary>What may be asked for now; nothing is asked for again and again without a change in between.</summary>
    public static List<CheckOffer> All(UnitTrack track, SittingNow sitting, Ablation without)
    {
        int[] ends = [0, 2], all = [0, 1, 2];
        var offers = new List<CheckOffer> { new("contact", ends), new("contact", [0]), new("contact", [2]), new("contact", all) };
        if (track.Unit.Owns.Contains("strip"))
        {
            offers.Add(new("paper-cut", all));
            offers.AddRange(all.Select(s => new CheckOffer("paper-cut", [s])));
            offers.AddRange(all.Select(s => new CheckOffer("paper-cut", [.. all.Where(o => o != s)])));
            if (ends.All(s => sitting.Done("contact", s) == 0)) offers.Add(new("contact", ends, "paper-cut", all));
            offers.Add(new("paper-drag", ends));
        }
        if (track.Unit.Owns.Contains("torch")) offers.Add(new("torch", all));
        if (track.Unit.Owns.Contains("feeler")) offers.Add(new("feeler", ends));
        if (without.HasFlag(Ablation.Contact)) offers.RemoveAll(o => o.Kind == "contact");
        // Felt or fed again a minute later with nothing changed, it would tell almost nothing (common practice, no source).
        offers.RemoveAll(o => o.At.Any(s => sitting.Done(o.Kind, s) > 0) || (o.With is not null && o.WithAt!.Any(s => sitting.Done(o.With, s) > 0)));
        // Whatever was changed in this sitting, the strip is fed in everywhere before it mows: then at once, as anybody does.
        if (track.Memory.Signs.Changed && !without.HasFlag(Ablation.StripLast))
        {
            int[] unfed = [.. all.Where(s => !track.Memory.Signs.Fed(s))];
            offers.RemoveAll(o => o.Kind == "paper-cut" && !o.At.SequenceEqual(unfed));
        }
        // A torch sees the edge alone, which no adjuster moves.
        if (sitting.Since("torch", "lap", "stone", "grind", "rebuild")) offers.RemoveAll(o => o.Kind == "torch");
        // Who turns the reel feels both ends: one alone only where the other was felt already.
        offers.RemoveAll(o => o.Kind == "contact" && o.At is [var s and (0 or 2)] && sitting.Done("contact", 2 - s) == 0);
        return offers;
    }
}
