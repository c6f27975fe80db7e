using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>A reading that could be taken, and how well the setting for a wished cut would be known after it.</summary>
/// <param name="What"><c>canopy</c> after the next mowing, or <c>gauge</c> before it and <c>canopy</c> after it.</param>
/// <param name="Spots">Spots read on the turf.</param>
/// <param name="Mowings">Mowings it is read after.</param>
/// <param name="SdAfterMm">Spread of what to set for a cut, once it is read, mm.</param>
public sealed record CutReading(string What, int Spots, int Mowings, double SdAfterMm)
{
    private const int Few = 5, Many = 10;

    /// <summary>The readings on offer, the one that teaches most first; in a linear-Gaussian model what a reading teaches does not depend on what it shows.</summary>
    /// <param name="belief">What is known.</param>
    /// <param name="area">The area; null for the one last mown.</param>
    /// <param name="wet">Whether it is wet.</param>
    /// <param name="how">What the turf is read with: <c>prism</c>, <c>ruler</c>, <c>card</c> or <c>photo</c>.</param>
    public static IReadOnlyList<CutReading> Of(HeightBelief belief, string? area = null, bool wet = false, string how = "ruler")
    {
        ArgumentNullException.ThrowIfNull(belief);
        var spot = HeightDefaults.CanopySdMm[how];
        Term[] sink = belief.Track.SinkOn(area, wet, null);
        Term[] bench = [Term.State(0, HeightLayout.Left, 0.5), Term.State(0, HeightLayout.Right, 0.5)];
        double VarianceOf(params Term[] terms) => belief.Last.Predict(terms).Variance;
        double ofSink = VarianceOf(sink), ofBench = VarianceOf(bench), both = (VarianceOf([.. bench, .. sink]) - ofSink - ofBench) / 2;
        // Gauged once more, both sides: what is left of the bench height, of the sink, and of what they share.
        var leaves = Math.Pow(belief.GaugeSdMm.Mean, 2) / 2 / (ofBench + (Math.Pow(belief.GaugeSdMm.Mean, 2) / 2));
        return [.. ((CutReading[])
        [
            new(CanopyEntry.Name, Few, 1, After(Few, 1, ofBench, ofSink, both)),
            new(CanopyEntry.Name, Many, 1, After(Many, 1, ofBench, ofSink, both)),
            new("gauge, canopy", Few, 1, After(Few, 1, leaves * ofBench, ofSink - ((1 - leaves) * both * both / ofBench), leaves * both)),
            new(CanopyEntry.Name, Few, 2, After(Few, 2, ofBench, ofSink, both)),
        ]).OrderBy(r => r.SdAfterMm)];

        // The reading is bench − sink + grain + scatter of the spots.
        double After(int spots, int mowings, double benchVariance, double sinkVariance, double covariance)
        {
            var noise = ((HeightDefaults.GrainMm * HeightDefaults.GrainMm) + (spot * spot / spots)) / mowings;
            var with = covariance - sinkVariance;
            return Math.Sqrt(Math.Max(0, sinkVariance - (with * with / (benchVariance + sinkVariance - (2 * covariance) + noise))));
        }
    }
}
