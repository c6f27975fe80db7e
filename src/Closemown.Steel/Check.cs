using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One check at one station: what it sees of the state, where its categories part, and how much it scatters.</summary>
/// <param name="Kind">Kind of the entry, such as <c>contact</c>.</param>
/// <param name="Station">0 left, 1 centre, 2 right.</param>
/// <param name="Terms">The linear predictor, µm; step numbers are filled in where it is used.</param>
/// <param name="CutPoints">Where the categories part, ascending, µm.</param>
/// <param name="Words">The categories in ascending order of the predictor.</param>
/// <param name="SdUm">Scatter, µm.</param>
public sealed record Check(string Kind, int Station, Term[] Terms, double[] CutPoints, IReadOnlyList<string> Words, double SdUm)
{
    /// <summary>The terms at a step of the chain.</summary>
    internal Term[] At(int step) => Array.ConvertAll(Terms, t => t.Step < 0 ? t : Term.State(step, t.Index, t.Weight));
}

/// <summary>A check with what was read: a category, or for a feeler gauge an interval.</summary>
/// <param name="Check">The check.</param>
/// <param name="Category">Index of the category read; −1 for an interval.</param>
/// <param name="Low">Lower limit of an interval, µm.</param>
/// <param name="High">Upper limit of an interval, µm.</param>
internal sealed record CheckRead(Check Check, int Category, double Low, double High)
{
    /// <summary>Share of its variance that it has in common with others of its kind, place and person while nothing is changed.</summary>
    public double Shared { get; init; }

    /// <summary>Tells readings by blade apart; 0 where no blade was named.</summary>
    public int Kin { get; init; }

    /// <summary>The limits of those like it that were made before with nothing changed between.</summary>
    public IReadOnlyList<(double Low, double High)> Earlier { get; init; } = [];

    /// <summary>What is alike of such readings.</summary>
    public (string Kind, int Station, int Kin) Like => (Check.Kind, Check.Station, Kin);

    /// <summary>
    /// How much more it scatters in one pass, which does not remember the shared part: n like readings tell as much as one of variance σ²(ρ + (1 − ρ)/n),
    /// and what the n-th adds is the difference.
    /// </summary>
    private double Widening => Earlier.Count == 0 || Shared == 0 ? 1 : 1 / Math.Sqrt(Told(Earlier.Count + 1) - Told(Earlier.Count));

    private double Told(int readings) => 1 / (Shared + ((1 - Shared) / readings));

    /// <summary>Adds the reading to the chain; the person is the group whose scatter it shares.</summary>
    public void AddTo(ChainModel chain, int step, int person)
    {
        if (Category >= 0) chain.AddCategory(Check.At(step), 0, Check.CutPoints, Category, Check.SdUm, person, Shared, Kin);
        else chain.AddInterval(Check.At(step), 0, Low, High, Check.SdUm, person, Shared, Kin);
    }

    /// <summary>Takes the reading into a running belief.</summary>
    /// <returns>Logarithm of its probability before it was seen.</returns>
    public double Observe(ForwardPass pass, double factor)
    {
        var (low, high) = Limits();
        return pass.ObserveInterval(Check.Terms, 0, low, high, Check.SdUm * factor * Widening);
    }

    /// <summary>The probability, before it was seen, of each thing that could have been read; a feeler's are below, between and above its limits.</summary>
    /// <param name="pass">The running belief.</param>
    /// <param name="factor">The person's scatter against the starting value.</param>
    /// <param name="read">Which of them was read.</param>
    public double[] Probabilities(ForwardPass pass, double factor, out int read)
    {
        if (Category >= 0)
        {
            read = Category;
            return pass.CategoryProbabilities(Check.Terms, 0, Check.CutPoints, Check.SdUm * factor * Widening);
        }
        double[] cuts = (double.IsFinite(Low), double.IsFinite(High)) switch
        {
            (true, true) => [Low, High],
            (true, false) => [Low],
            _ => [High],
        };
        read = double.IsFinite(Low) ? 1 : 0;
        return pass.CategoryProbabilities(Check.Terms, 0, cuts, Check.SdUm * factor * Widening);
    }

    /// <summary>The probability of each thing that could be read, given those read before it and what the predictor was before the first of them.</summary>
    public double[] GivenEarlier(SharedError error, (double Mean, double Variance) before, double factor, out int read)
    {
        read = Category >= 0 ? Category : double.IsFinite(Low) ? 1 : 0;
        double[] cuts = Category >= 0 ? Check.CutPoints : [.. ((double[])[Low, High]).Where(double.IsFinite)];
        var p = new double[cuts.Length + 1];
        for (var c = 0; c < p.Length; c++)
        {
            var limits = (c == 0 ? double.NegativeInfinity : cuts[c - 1], c == cuts.Length ? double.PositiveInfinity : cuts[c]);
            p[c] = error.LogProbability([.. Earlier, limits], before.Mean, Math.Max(1e-6, before.Variance), Check.SdUm * factor, Shared);
        }
        var most = p.Max();
        for (var c = 0; c < p.Length; c++) p[c] = Math.Exp(p[c] - most);
        var sum = p.Sum();
        for (var c = 0; c < p.Length; c++) p[c] /= sum;
        return p;
    }

    public (double Low, double High) Limits() => Category < 0 ? (Low, High)
        : (Category == 0 ? double.NegativeInfinity : Check.CutPoints[Category - 1],
           Category == Check.CutPoints.Length ? double.PositiveInfinity : Check.CutPoints[Category]);
}
