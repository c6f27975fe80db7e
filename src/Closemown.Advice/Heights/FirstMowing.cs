using Closemown.Height;

namespace Closemown.Advice;

/// <summary>What the first mowing at a height that is asked for would take of the turf as it stands, where that is too much.</summary>
/// <param name="Area">The area.</param>
/// <param name="StandsMm">What its turf stands at, mm.</param>
/// <param name="CutMm">What it would be cut to, mm.</param>
/// <param name="Steps">The mowings that come down instead, a third at most each.</param>
internal sealed record FirstMowing(string Area, double StandsMm, double CutMm, IReadOnlyList<StepDownRow> Steps)
{
    /// <summary>How much of the standing height it would take, 0 to 1.</summary>
    public double Share => (StandsMm - CutMm) / StandsMm;

    /// <summary>The mowing; null where it takes a third at most, or nobody knows what stands there.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="question">The height asked for: on its area, or on the only one.</param>
    public static FirstMowing? Of(Desk desk, AimQuestion question)
    {
        var area = question.Area ?? (desk.Areas.Count == 1 ? desk.Areas.First() : null);
        if (area is null || StandingNow.Of(desk, area, question.Now) is not { } stands) return null;
        var belief = desk.Height(question.Unit, question.Now);
        var bench = question.Aim(belief).Bench;
        var cut = question.CutMm ?? (((bench.LeftMm + bench.RightMm) / 2) - belief.SinkMm(area).Mean);
        if (cut <= 0 || (stands - cut) / stands <= StepDown.UsualShare) return null;
        return new(area, stands, cut, StepDown.Of(stands, cut) ?? []);
    }

    /// <summary>It in a sentence, with the way down.</summary>
    /// <param name="belief">The unit that would mow it.</param>
    public string Say(HeightBelief belief)
    {
        var first = Steps.Count > 1 ? $" (step-down): {Count(Steps.Count)} mowings, the first cut at {HeightSpeech.Near(Steps[0].CutMm)} with the bench at {HeightSpeech.Near(belief.SetBenchMm(Steps[0].CutMm, Area).Mean)}" : " (step-down)";
        return $"{Phrasing.AsTyped(Area)} stands at about {HeightSpeech.Near(StandsMm)}: the first mowing at this height would take {Math.Round(100 * Share):0} % of it, more than a third. Come down in steps instead{first}.";
    }

    private static string Count(int n) => n switch { 2 => "two", 3 => "three", 4 => "four", 5 => "five", _ => n.ToString(System.Globalization.CultureInfo.InvariantCulture) };
}
