using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Typing;

namespace Closemown.Pages;

/// <summary>One line of the card as it was typed in: a mowing, with what the paper did before it.</summary>
public sealed class CardRow
{
    private static readonly TimeSpan UsualHour = TimeSpan.FromHours(10), PaperBefore = TimeSpan.FromMinutes(10);

    /// <summary>The day, as 2026-05-03.</summary>
    public string Date { get; set; } = "";

    /// <summary>How long was mown, as typed; hours where no unit is typed.</summary>
    public string Hours { get; set; } = "";

    /// <summary>What the paper did at the left, centre and right; empty where it was not tried.</summary>
    public string[] Paper { get; set; } = ["", "", ""];

    /// <summary>What else was seen.</summary>
    public string Note { get; set; } = "";

    /// <summary>What is wrong with it; null where nothing is.</summary>
    public string? Trouble { get; set; }

    /// <summary>Whether anything is told but the day.</summary>
    public bool IsBlank => Hours.Length == 0 && Note.Length == 0 && Paper.All(p => p.Length == 0);

    /// <summary>The entries that the line stands for; none, with <see cref="Trouble"/> said, where it cannot be read.</summary>
    /// <param name="unit">The cutting unit.</param>
    /// <param name="area">The turf area; null for none.</param>
    /// <param name="by">Who mowed; empty for no name.</param>
    /// <param name="asked">Now: its offset is that of the day, and nothing is later.</param>
    /// <param name="style">How numbers are typed.</param>
    public IReadOnlyList<JsonObject> Entries(string unit, string? area, string by, DateTimeOffset asked, WritingStyle style)
    {
        Trouble = null;
        if (PlannedDay.ReadDate(Date) is not { } day)
        {
            Trouble = "The day is missing: write it as 2026-05-03.";
            return [];
        }
        var at = new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), asked.Offset) + UsualHour;
        if (day > DateOnly.FromDateTime(asked.DateTime))
        {
            Trouble = "That day is still to come.";
            return [];
        }
        if (at > asked) at = asked;
        var entries = new List<JsonObject>();
        if (Paper.Any(p => p.Length > 0))
        {
            var paper = Begun("paper-cut", unit, by, at - PaperBefore);
            foreach (var (station, word) in Stations.All.Zip(Paper))
            {
                if (word.Length > 0) paper[station] = word;
            }
            if (Hours.Length == 0 && Note.Length > 0) paper["note"] = Note;
            entries.Add(paper);
        }
        if (Hours.Length > 0)
        {
            var mow = new TypedEntry(MowEntry.Kind, style);
            try
            {
                mow.Set(mow.Kind.Fields[mow.Kind.IndexOf("hours")], Hours);
            }
            catch (TypedFault fault)
            {
                Trouble = $"{fault.Message} {fault.Remedy}";
                return [];
            }
            var json = mow.Json();
            foreach (var (name, value) in Begun("mow", unit, by, at)) json[name] = value?.DeepClone();
            if (area is not null) json["area"] = area;
            if (Note.Length > 0) json["note"] = Note;
            entries.Add(json);
        }
        else if (entries.Count == 0) Trouble = "Neither hours nor paper: there is nothing to write down.";
        return entries;
    }

    private static JsonObject Begun(string kind, string unit, string by, DateTimeOffset at)
    {
        var entry = new JsonObject { ["kind"] = kind, ["at"] = at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture), ["unit"] = unit };
        if (by.Length > 0) entry["by"] = by;
        return entry;
    }
}
