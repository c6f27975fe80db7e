using Closemown.Estimation;
using Closemown.Steel;

namespace Closemown.Cli;

/// <summary>The gap along the width: at the stations as estimated, between them a straight line with the bow upon it.</summary>
internal sealed class NipProfile(SteelBelief belief)
{
    private readonly UnitDescription unit = belief.Track.Unit;

    /// <summary>Half of what is drawn, mm.</summary>
    public double HalfMm => Math.Max(unit.WidthMm / 2, unit.StationAtMm.Max(Math.Abs));

    /// <summary>The gap at a place, µm.</summary>
    /// <param name="atMm">mm from the middle, left negative.</param>
    public Estimate At(double atMm)
    {
        var right = (atMm - unit.AdjusterAtMm[0]) / (unit.AdjusterAtMm[1] - unit.AdjusterAtMm[0]);
        var (mean, variance) = belief.Last.Predict([Term.State(0, Layout.ClearanceLeft, 1 - right), Term.State(0, Layout.ClearanceRight, right), Term.State(0, Layout.Bow, BowShare(atMm))]);
        return Estimate.Normal(mean, variance);
    }

    /// <summary>1 at the middle station, 0 at the outer ones and beyond: a parabola.</summary>
    private double BowShare(double atMm)
    {
        var middle = unit.StationAtMm[1];
        var reach = atMm < middle ? middle - unit.StationAtMm[0] : unit.StationAtMm[2] - middle;
        var share = reach > 0 ? (atMm - middle) / reach : 1;
        return Math.Max(0, 1 - (share * share));
    }
}
