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
        yield return $"Growth in the coming month asks for about {Range(feed.LowGm2, feed.HighGm2)} of nitrogen; {Feed(feed.GivenGm2)} was given in the last 30 days ({Label}).";
        if (t.Day.RegulatorCDays is { } sum)
            yield return $"The growth regulator has {sum.ToString("0", CultureInfo.InvariantCulture)} of {TurfAnswer.Clock(t.Ledger.Track.Area).ThresholdCDays.ToString("0", CultureInfo.InvariantCulture)} °C·day behind it ({Label}).";
        if (DiseaseRisk.DollarSpotOf(t.Ledger.Track.Days, t.Date) is { } spot)
            yield return $"Dollar spot by five days' warmth and humidity: {StepSpeech.InHundred(spot.Value)}{(spot.Outside is null ? "" : $" (outside the published range: {spot.Outside})")} ({Label}).";
    }

    private static string Range(double low, double high) => N(low) == N(high) ? Feed(low) : $"{Feed(low)} to {Feed(high)}";

    private static string Feed(double gm2) => $"{{feed:{N(gm2)}}}";

    private static string N(double x) => x.ToString("0.0", CultureInfo.InvariantCulture);
}
