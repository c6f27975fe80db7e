using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>One step at the bench, with its numbers.</summary>
public sealed class BenchStep(JsonObject json)
{
    /// <summary>The longest round of lapping, minutes. Common practice, no source.</summary>
    public const double LongestRoundMinutes = 2;

    /// <summary>Its words, reasons and cautions.</summary>
    public TaskAnswer Task { get; } = new(json);

    /// <summary>What is done.</summary>
    public string Do => Task.Do;

    /// <summary>The stations of a check; empty for all.</summary>
    public IReadOnlyList<string> Stations => [.. (json["stations"] as JsonArray ?? []).Select(s => (string)s!)];

    /// <summary>Steps of the adjusters, + is in; 0 where it is no turn of them.</summary>
    public (double Left, double Right) Clicks => (Number("left"), Number("right"));

    /// <summary>Turns of the height screws, + raises.</summary>
    public (double Left, double Right) Turns => (Number("leftTurns"), Number("rightTurns"));

    /// <summary>Minutes of lapping.</summary>
    public double Minutes => Number("minutes");

    /// <summary>Grit, mesh; null where none is named.</summary>
    public double? Grit => (double?)json["grit"];

    /// <summary>The part, of a filing or grinding; empty for none.</summary>
    public string What => (string?)json["what"] ?? "";

    /// <summary>What is asked by the way; empty for nothing.</summary>
    public string Asks => (string?)json["asks"] ?? "";

    /// <summary>The blade to be felt; empty where the check is of no one blade.</summary>
    public string Blade => (string?)json["blade"] ?? "";

    /// <summary>The check, where it has words at stations; else null.</summary>
    public CheckKind? Check => CheckKind.All.FirstOrDefault(c => c.Kind == Do);

    /// <summary>The kind of entry that says it was done as said; null where what was read must be told.</summary>
    public string? DoneKind => Do switch
    {
        "clicks" or "square-up" or "lap" or "stone" or "grind" or "screw" => Do,
        "lock" => "locked",
        "repair" => "rebuild",
        "knife-screws" => "service",
        _ => null,
    };

    private double Number(string field) => (double?)json[field] ?? 0;
}
