using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>Predictors at the three stations: how clearance and edge there follow from the state.</summary>
public static class Stations3
{
    /// <summary>Terms of the clearance at a station, bow included.</summary>
    /// <param name="unit">The unit, for its geometry.</param>
    /// <param name="station">0 left, 1 centre, 2 right.</param>
    /// <param name="step">The chain's step.</param>
    public static Term[] ClearanceTerms(UnitDescription unit, int station, int step = 0)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var (l, r) = unit.Weights(station);
        return station == Stations.IndexOf(Stations.Centre)
            ? [Term.State(step, Layout.ClearanceLeft, l), Term.State(step, Layout.ClearanceRight, r), Term.State(step, Layout.Bow, 1)]
            : [Term.State(step, Layout.ClearanceLeft, l), Term.State(step, Layout.ClearanceRight, r)];
    }

    /// <summary>Mean and variance of the clearance at a station.</summary>
    public static (double Mean, double Variance) Clearance(GaussianState belief, UnitDescription unit, int station)
    {
        ArgumentNullException.ThrowIfNull(belief);
        return belief.Predict(ClearanceTerms(unit, station));
    }

    /// <summary>Mean and variance of clearance + edge at a station.</summary>
    public static (double Mean, double Variance) UsableGap(GaussianState belief, UnitDescription unit, int station)
    {
        ArgumentNullException.ThrowIfNull(belief);
        return belief.Predict([.. ClearanceTerms(unit, station), Term.State(0, Layout.Edge + station, 1)]);
    }
}
