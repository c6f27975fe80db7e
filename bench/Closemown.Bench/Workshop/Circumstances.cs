namespace Closemown.Bench.Workshop;

/// <summary>What a season is lived under.</summary>
/// <param name="Hours">Hours a mowing.</param>
/// <param name="Fingers">How many times worse than usual the hands are: scatter of paper, drag and contact.</param>
/// <param name="StripOffUm">How much thicker the strip is than stated, beyond its own scatter.</param>
/// <param name="Mistakes">Share of readings written down as the word next to the one read.</param>
/// <param name="CleanSdUm">How far one turf's clean limit is from another's.</param>
/// <param name="SharedShare">Share of an error's variance that readings of one kind at one place have in common while nothing is changed; 0: each errs for itself.</param>
/// <param name="OtherWear">Whether steel wears and dulls by another law, see <see cref="RootWear"/>.</param>
internal sealed record Circumstances(double Hours = 1, double Fingers = 1, double StripOffUm = 0, double Mistakes = 0, double CleanSdUm = 5, double SharedShare = 0.75, bool OtherWear = false);
