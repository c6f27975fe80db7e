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
    public void AddTo(ChainModel chain, int step)
    {
        if (Category >= 0) chain.AddCategory(Check.At(step), 0, Check.CutPoints, Category, Check.SdUm);
        else chain.AddInterval(Check.At(step), 0, Low, High, Check.SdUm);
    }

    public void Observe(ForwardPass pass)
    {
        var (low, high) = Limits();
        pass.ObserveInterval(Check.Terms, 0, low, high, Check.SdUm);
    }

    /// <summary>The probability, before it was seen, of a reading at least this odd.</summary>
    public double Surprise(ForwardPass pass)
    {
        if (Category >= 0) return Estimation.Surprise.OfCategory(pass.CategoryProbabilities(Check.Terms, 0, Check.CutPoints, Check.SdUm), Category);
        double[] cuts = (double.IsFinite(Low), double.IsFinite(High)) switch
        {
            (true, true) => [Low, High],
            (true, false) => [Low],
            _ => [High],
        };
        var read = double.IsFinite(Low) ? 1 : 0;
        return Estimation.Surprise.OfCategory(pass.CategoryProbabilities(Check.Terms, 0, cuts, Check.SdUm), read);
    }

    private (double Low, double High) Limits() => Category < 0 ? (Low, High)
        : (Category == 0 ? double.NegativeInfinity : Check.CutPoints[Category - 1],
           Category == Check.CutPoints.Length ? double.PositiveInfinity : Check.CutPoints[Category]);
}
