using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>Which unknowns a height cut is the sum of: the bench, less what the gauge reads too much and what the mower sinks.</summary>
internal static class CutTerms
{
    /// <summary>Of the height cut, the grain of the day in it.</summary>
    /// <param name="sink">Of gauge zero and sink, from <see cref="Sink"/>.</param>
    public static Term[] Cut(Term[] sink) =>
        [Term.State(0, HeightLayout.Left, 0.5), Term.State(0, HeightLayout.Right, 0.5), Term.State(0, HeightLayout.Grain, 1), .. Less(sink)];

    /// <summary>Of what the gauge reads more than is cut, the grain apart: gauge zero and sink.</summary>
    /// <param name="slot">The area's place among the sinks.</param>
    /// <param name="wet">Whether the turf was wet.</param>
    /// <param name="soft">Whether it is soft; null where nobody said.</param>
    /// <param name="grooved">Whether the front roller is grooved.</param>
    public static Term[] Sink(int slot, bool wet, bool? soft, bool grooved)
    {
        List<Term> terms = [Term.State(0, HeightLayout.Season, 1), Term.Constant(HeightLayout.Zero, 1), Term.Constant(HeightLayout.Sink + slot, 1)];
        if (wet) terms.Add(Term.Constant(HeightLayout.SinkWet, 1));
        if (soft is { } s) terms.Add(Term.Constant(HeightLayout.SinkSoft, s ? 0.5 : -0.5));
        if (grooved) terms.Add(Term.Constant(HeightLayout.SinkGrooved, 1));
        return [.. terms];
    }

    /// <summary>The same terms taken away.</summary>
    public static IEnumerable<Term> Less(Term[] terms) =>
        terms.Select(t => t.IsConstant ? Term.Constant(t.Index, -t.Weight) : Term.State(0, t.Index, -t.Weight));
}
