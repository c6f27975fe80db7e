using System.Globalization;
using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>One of today's things, or a step, as answers give it.</summary>
public sealed class TaskAnswer(JsonObject json)
{
    private static readonly string[] OnTheTurf = ["canopy", "step-down", "wait", "water"];

    /// <summary>The answer itself.</summary>
    public JsonObject Json => json;

    /// <summary>What is done.</summary>
    public string Do => Text("do");

    /// <summary>The cutting unit; empty for none.</summary>
    public string Unit => Text("unit");

    /// <summary>The area; empty for none.</summary>
    public string Area => Text("area");

    /// <summary>What to do, as a sentence.</summary>
    public string Say => Text("say");

    /// <summary>Why now.</summary>
    public string Because => Text("because");

    /// <summary>The reasons.</summary>
    public IReadOnlyList<string> Why => Items("why");

    /// <summary>Its cautions.</summary>
    public IReadOnlyList<string> Cautions => Items("cautions");

    /// <summary>The id under which its reasons can be asked for; empty for none.</summary>
    public string Advice => Text("advice");

    /// <summary>"2 min"; empty where it takes no time.</summary>
    public string Takes => (double?)json["takesMinutes"] switch
    {
        null or <= 0 => "",
        < 1 => "under a minute",
        var minutes => $"{Math.Round(minutes.Value).ToString(CultureInfo.InvariantCulture)} min",
    };

    /// <summary>The probability that the pair is then in tolerance; null where the step says none.</summary>
    public double? InTolerance => (double?)json["expect"]?["inTolerance"];

    /// <summary>After what that is: "after this step", "after all steps", "as it stands".</summary>
    public string AfterSaid => (string?)json["expect"]?["after"] switch { "plan" => "after all steps", "step" => "after this step", _ => "as it stands" };

    /// <summary>Where it is done, and the words of the way there.</summary>
    public (string Path, string Words) Way => Do switch
    {
        "mow" => ($"/after{Query}", "Mown? Note it"),
        _ when OnTheTurf.Contains(Do) => ($"/turf{Query}", Do == "canopy" ? "Read the height" : "See the turf"),
        _ => ($"/bench{Query}", "Start, step by step"),
    };

    /// <summary>Where the height of a mowing is set at the bench; null where it is no mowing with a unit and a cut.</summary>
    public string? SettingHeight => Do == "mow" && Unit.Length > 0 && (double?)json["cutMm"] is { } cut && json["benchMm"] is not null
        ? $"/bench{Query}&aim={cut.ToString(CultureInfo.InvariantCulture)}" : null;

    private string Query
    {
        get
        {
            var parts = new List<string>();
            if (Unit.Length > 0) parts.Add("unit=" + Uri.EscapeDataString(Unit));
            if (Area.Length > 0) parts.Add("area=" + Uri.EscapeDataString(Area));
            return parts.Count > 0 ? "?" + string.Join('&', parts) : "";
        }
    }

    private string Text(string field) => (string?)json[field] ?? "";

    private IReadOnlyList<string> Items(string field) => [.. (json[field] as JsonArray ?? []).Select(i => (string?)i ?? "")];
}
