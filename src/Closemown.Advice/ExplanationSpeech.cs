using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Rival explanations of an odd reading, in words.</summary>
public static class ExplanationSpeech
{
    /// <summary>One explanation as part of a sentence.</summary>
    public static string Say(Explanation e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Kind switch
        {
            RivalKind.MistakenReading => $"the {KindWords.Reading(e.About!.Kind)} read{(e.Station >= 0 ? " " + StepSpeech.Place(e.Station) : "")}{On(e.About)} was mistaken",
            RivalKind.Strike => $"it hit something{On(e.About!)}, unnoticed",
            RivalKind.SlippedClick => $"an adjuster did not move as far as it was turned{On(e.About!)}",
            RivalKind.MovedUnseen => $"something moved before the reading{On(e.About!)}, unnoticed",
            RivalKind.MovedAtRebuild => "something settled after it was put together",
            _ => "nothing happened, readings differ by chance",
        };
    }

    /// <summary>All of them as one sentence, the most probable first; null where there is nothing but chance.</summary>
    public static string? Sentence(IReadOnlyList<Explanation> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        if (!all.Any(e => e.Kind != RivalKind.Chance)) return null;
        var said = all.OrderByDescending(e => e.Probability).Where(e => e.Probability >= 0.05).Take(3).Select(e => $"{Say(e)} ({StepSpeech.Chance(e.Probability)})");
        return $"What may lie behind it: {string.Join("; or ", said)}.";
    }

    internal static JsonArray Json(IReadOnlyList<Explanation> all) => new([.. all.Select(e =>
    {
        var one = new JsonObject { ["what"] = e.Name, ["probability"] = Math.Round(e.Probability, 4), ["say"] = Say(e) };
        if (e.About is not null) one["id"] = e.About.Id.ToString("D");
        if (e.Station >= 0) one["station"] = Stations.All[e.Station];
        return (JsonNode)one;
    })]);

    private static string On(Entry e) => $" on {e.At.ToString("d MMMM", System.Globalization.CultureInfo.InvariantCulture)}";
}
