using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>How a nip moves from mowing to mowing and what turning and lapping do to it, both sides taken together; lengths in µm.</summary>
/// <param name="Hours">Hours of a mowing.</param>
/// <param name="OpenUm">How far a mowing opens it.</param>
/// <param name="DullUm">How much a mowing blunts it.</param>
/// <param name="ClickUm">A click.</param>
/// <param name="LapUmPerMinute">Opening of a minute of lapping where the pair stands close.</param>
/// <param name="CleanUm">Gap and bluntness at which half the leaves are torn.</param>
/// <param name="CutsUm">Gap and bluntness up to which the strip in use cuts, with the scatter of a reading of it: while it cuts nothing is brought in or lapped. Null where the strip decides nothing.</param>
/// <param name="SeenUm">How well a gap will be known when it is acted on.</param>
/// <param name="BandUm">In tolerance.</param>
/// <param name="Relief">Whether the bedknife has a relief face; null where that is not known.</param>
public sealed record NipRates(double Hours, double OpenUm, double DullUm, double ClickUm, double LapUmPerMinute, Prior CleanUm, Prior? CutsUm, double SeenUm, (double Low, double High) BandUm, bool? Relief)
{
    private const double BelievedSeenUm = 5;             // a gap felt at both ends once or twice

    /// <summary>Of a unit as it is believed to be. Rates are held above a little, so that a future does not stand still.</summary>
    public static NipRates Of(SteelBelief belief)
    {
        ArgumentNullException.ThrowIfNull(belief);
        var unit = belief.Track.Unit;
        var hours = belief.Track.Memory.UsualHours;
        var clean = belief.CleanUm;
        return new(hours, Math.Max(0.3, Mean(belief.OpeningUmPerHour) * hours) + Math.Max(0, Mean(belief.OpeningUmPerOuting)), Math.Max(0.2, belief.DullingUmPerHour.Mean * hours),
            Math.Max(5, Mean(belief.ClickUm)), Math.Max(1, belief.LapUmPerMinute.Mean), new(clean.Mean, clean.Sd), Cuts(belief), BelievedSeenUm, unit.BandUm, unit.Relief);

        static Prior Cuts(SteelBelief belief)
        {
            var (track, strip) = (belief.Track, belief.Track.Strip);
            var check = Steel.Checks.Of("paper-cut", 1, track.Unit, strip);
            return new(check.CutPoints[0], Math.Sqrt((check.SdUm * check.SdUm) + (strip.SdUm * strip.SdUm / 4)));
        }

        static double Mean(Func<int, Estimate> of) => (of(0).Mean + of(1).Mean) / 2;
    }
}
