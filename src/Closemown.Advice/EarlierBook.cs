using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>Finds the book that an advice was given on within the book as it is now.</summary>
/// <remarks>
/// The entries known then are, in this order of looking: the first to have arrived here; those without one run of others that arrived
/// here before them, as when two devices bring their books together from time to time; or the first in order of time. Anything else
/// cannot be told.
/// </remarks>
internal static class EarlierBook
{
    /// <summary>A desk with the entries known then; null where they cannot be told.</summary>
    /// <param name="desk">The book as it is now.</param>
    /// <param name="id">What the advice's id says.</param>
    public static Desk? Of(Desk desk, AdviceName id)
    {
        if (id.Count > desk.Arrived.Count) return null;
        if (id.Chain is { } chain) return AdviceId.Fits(chain, desk.HashAfter(id.Count)) ? desk.Before(id.Count) : null;
        if (BookState.Shortened(desk.SumAfter(id.Count)) == id.Sum) return desk.Before(id.Count);
        if (Gap(desk, id) is { } gap)
            return desk.With([.. Enumerable.Range(0, gap.From), .. Enumerable.Range(gap.To, id.Count - gap.From)]);
        var first = Enumerable.Range(0, desk.Arrived.Count).OrderBy(i => desk.Arrived[i], EntryOrder.Instance).Take(id.Count).ToArray();
        return BookState.Shortened(desk.SumOf(first)) == id.Sum ? desk.With(first) : null;
    }

    /// <summary>The one run of arrivals that was not known then: from (inclusive) and to (exclusive).</summary>
    private static (int From, int To)? Gap(Desk desk, AdviceName id)
    {
        var sums = new ulong[desk.Arrived.Count + 1];
        for (var i = 0; i < sums.Length; i++) sums[i] = desk.SumAfter(i);
        for (var wide = 1; wide + id.Count < sums.Length; wide++)
        {
            var with = sums[id.Count + wide];
            for (var from = 0; from < id.Count; from++)
            {
                var without = BookState.Less(with, BookState.Less(sums[from + wide], sums[from]));
                if (BookState.Shortened(without) == id.Sum) return (from, from + wide);
            }
        }
        return null;
    }
}
