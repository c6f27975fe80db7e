using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What is believed of an area before its first entry.</summary>
internal static class CanopyStart
{
    private const double StressMean = 0.4, StressSd = 0.6;

    public static void AddTo(ChainModel chain, TurfArea area)
    {
        var full = area.FullRateMm;
        State(CanopyLayout.Canopy, AreaDefaults.CanopyMm, AreaDefaults.CanopySdMm);
        State(CanopyLayout.Before, AreaDefaults.CanopyMm, AreaDefaults.CanopySdMm);
        State(CanopyLayout.Offset, 0, AreaDefaults.ToldCutSdMm);
        State(CanopyLayout.Spell, 0, full * AreaDefaults.SpellShareSd);
        State(CanopyLayout.Stress, StressMean, StressSd);
        Constant(CanopyLayout.Rate, full, full * AreaDefaults.RateShareSd);
        Share(CanopyLayout.Feed, AreaDefaults.FeedShare, AreaDefaults.FeedShareSd);
        Share(CanopyLayout.Tall, AreaDefaults.TallShare, AreaDefaults.TallShareSd);
        Share(CanopyLayout.Wide, AreaDefaults.WideShare, AreaDefaults.WideShareSd);
        Share(CanopyLayout.Dry, AreaDefaults.DryShare, AreaDefaults.DryShareSd);
        Constant(CanopyLayout.Clippings, AreaDefaults.ClipMmPerLM2, AreaDefaults.ClipMmPerLM2Sd);
        Constant(CanopyLayout.Feels, AreaDefaults.StressShare, AreaDefaults.StressShareSd);

        void State(int i, double mean, double sd) => chain.AddGaussian([Term.State(0, i, 1)], mean, sd);
        // Turf that grows fast at its best grows fast when it is cold, fed or dry too.
        void Share(int i, double share, double sd) =>
            chain.AddGaussian([Term.Constant(i, 1), Term.Constant(CanopyLayout.Rate, -share)], 0, full * sd);
        void Constant(int i, double mean, double sd) => chain.AddGaussian([Term.Constant(i, 1)], mean, sd);
    }
}
