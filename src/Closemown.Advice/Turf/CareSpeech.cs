using System.Globalization;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What goes with mowing, in sentences: feed, growth regulator, disease. Information: the label and local law decide.</summary>
public static class CareSpeech
{
    private const string Label = "the label and local law decide";

    /// <summary>The sentences.</summary>
    public static IEnumerable<string> Of(AreaToday t)
    {
        ArgumentNullException.ThrowIfNull(t);
        var feed = t.Feed;
        yield return $"Growth in the coming month asks for about {Range(feed.LowGm2, feed.HighGm2)} g of nitrogen a m²; {N(feed.GivenGm2)} were given in the last 30 days ({Label}).";
        if (t.Day.RegulatorCDays is { } sum)
            yield return $"The growth regulator has {sum.ToString("0", CultureInfo.InvariantCulture)} of {TurfAnswer.Clock(t.Ledger.Track.Area).ThresholdCDays.ToString("0", CultureInfo.InvariantCulture)} °C·day behind it ({Label}).";
        if (DiseaseRisk.DollarSpotOf(t.Ledger.Track.Days, t.Date) is { } spot)
            yield return $"Dollar spot by five days' warmth and humidity: {StepSpeech.InHundred(spot.Value)}{(spot.Outside is null ? "" : $" (outside the published range: {spot.Outside})")} ({Label}).";
    }

    private static string Range(double low, double high) => N(low) == N(high) ? N(low) : $"{N(low)} to {N(high)}";

    private static string N(double x) => Phrasing.Number(x, "0.0");
}
