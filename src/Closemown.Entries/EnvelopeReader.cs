using System.Collections.ObjectModel;
using System.Globalization;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>What every entry carries, as read.</summary>
internal sealed record Head(Guid Id, DateTimeOffset At, string? Unit, string? Area, string? By, string? Note, Guid? Voids,
    IReadOnlyDictionary<string, string> Typed, IReadOnlyList<string> Confirmed);

/// <summary>Reads the envelope of a line: version, id, time, unit, area and the rest that all kinds share.</summary>
internal sealed class EnvelopeReader(JsonElement line, KindSpec kind, EntryContext context, List<EntryFault> faults)
{
    private const int MaxName = 80;
    private const int MaxNote = 10_000;

    public Head Read()
    {
        if (Present("v", out var v) && !(v.ValueKind == JsonValueKind.Number && v.TryGetDouble(out var n) && n == 1))
            Bad("v", $"The version is {Spelling.Clip(v.GetRawText())}.", "This program reads version 1: write \"v\": 1 or leave it out.");
        var at = At();
        var unit = Name("unit", kind.Belongs is Belongs.Unit or Belongs.UnitAndArea, context.OnlyUnit);
        var area = Name("area", kind.Belongs is Belongs.Area, context.OnlyArea);
        var head = new Head(Id(at), at, unit, area, Text("by", MaxName, isName: true), Text("note", MaxNote, isName: false), Voids(), Typed(), Confirmed());
        if (faults.Count == 0 && !head.Confirmed.Contains("at") && FarTimes.Ask(at, !Present("at", out _), context) is { } question) faults.Add(question);
        return head;
    }

    private bool Present(string field, out JsonElement value) => line.TryGetProperty(field, out value) && value.ValueKind != JsonValueKind.Null;

    private void Bad(string field, string message, string remedy) => faults.Add(new(FaultCodes.BadValue, field, message, remedy));

    private DateTimeOffset At()
    {
        if (!Present("at", out var value))
        {
            if (context.Now?.Invoke() is { } now)
            {
                if (EntryTime.IsTaken(now)) return now;
                Bad("at", $"The time that is meant where none is told is {EntryTime.Write(now)}.", $"Set the clock of this machine right, or say when it was, {EntryTime.Years}.");
                return default;
            }
            faults.Add(new(FaultCodes.Missing, "at", "The entry does not say when it happened.", "Add \"at\": like 2026-05-03T10:30:00+01:00."));
            return default;
        }
        if (value.ValueKind == JsonValueKind.String && EntryTime.TryReadAnyYear(value.GetString()!, out var at) && (context.IsStored || EntryTime.IsTaken(at))) return at;
        Bad("at", $"{Spelling.Clip(value.GetRawText())} is not a time with its offset.", $"Write it like 2026-05-03T10:30:00+01:00 or 2026-05-03T09:30:00Z, {EntryTime.Years}.");
        return default;
    }

    private Guid Id(DateTimeOffset at)
    {
        if (!Present("id", out var value))
        {
            if (context.NewId is not null) return context.NewId(at);
            faults.Add(new(FaultCodes.Missing, "id", "The entry has no id.", "Add \"id\": a UUID of version 7."));
            return default;
        }
        return Guid("id", value, version7: true);
    }

    private Guid Guid(string field, JsonElement value, bool version7)
    {
        if (value.ValueKind == JsonValueKind.String && System.Guid.TryParseExact(value.GetString(), "D", out var id) && (!version7 || EntryIds.IsVersion7(id)))
            return id;
        Bad(field, $"{Spelling.Clip(value.GetRawText())} is not a UUID of version 7.", "Write it like 01900000-0000-7000-8000-000000000001, or leave it out where a new one may be made.");
        return default;
    }

    private Guid? Voids()
    {
        if (Present("voids", out var value)) return Guid("voids", value, version7: false);
        if (kind.Name == VoidEntry.Name) faults.Add(new(FaultCodes.Missing, "voids", "The entry does not say what it takes out.", "Add \"voids\": the id of that entry; `closemown book list` shows ids."));
        return null;
    }

    private string? Name(string field, bool needed, Func<string?>? only)
    {
        var given = Text(field, MaxName, isName: true);
        if (given is not null || !needed) return given;
        if (Present(field, out _)) return null;          // given, but bad: already said
        if (only?.Invoke() is { } name) return name;
        faults.Add(new(FaultCodes.Missing, field, $"The entry does not say which {field} it is about.", $"Add \"{field}\": its short name."));
        return null;
    }

    private string? Text(string field, int longest, bool isName)
    {
        if (!Present(field, out var value)) return null;
        if (value.ValueKind == JsonValueKind.String)
        {
            if (context.IsStored) return value.GetString()!;
            var text = value.GetString()!.Trim();
            if (text.Length > 0 && (isName ? TextSigns.Hidden(text) : TextSigns.Steering(text, lines: true)) is { } sign)
            {
                Bad(field, $"The text of {field} cannot be kept. {sign}", "Take that sign out.");
                return null;
            }
            if (text.Length > 0 && text.Length <= longest) return text;
        }
        Bad(field, $"{Spelling.Clip(value.GetRawText())} is not a text of 1 to {longest} characters.", "Write a short text in quotes, or leave the field out.");
        return null;
    }

    private ReadOnlyDictionary<string, string> Typed()
    {
        if (!Present("typed", out var value)) return ReadOnlyDictionary<string, string>.Empty;
        var typed = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (var p in value.EnumerateObject())
            {
                if (p.Value.ValueKind == JsonValueKind.String && !context.IsStored
                    && (TextSigns.Hidden(p.Name) ?? TextSigns.Steering(p.Value.GetString()!, lines: true)) is { } sign)
                    Bad("typed", $"What was typed for {Spelling.Clip(p.Name)} cannot be kept. {sign}", "Take that sign out.");
                else if (p.Value.ValueKind != JsonValueKind.String) Bad("typed", $"What was typed for {Spelling.Clip(p.Name)} is not a text.", "Write it in quotes, like {\"mm\":\"5/32 in\"}.");
                else typed[p.Name] = p.Value.GetString()!;
            }
        }
        else
        {
            Bad("typed", "It is not an object.", "Write it like {\"mm\":\"5/32 in\"}.");
        }
        return new(typed);
    }

    private List<string> Confirmed()
    {
        var confirmed = new List<string>();
        if (!Present("confirmed", out var value)) return confirmed;
        if (value.ValueKind != JsonValueKind.Array || value.EnumerateArray().Any(e => e.ValueKind != JsonValueKind.String))
            Bad("confirmed", "It is not a list of field names.", "Write it like [\"clickUm\"].");
        else
            confirmed.AddRange(value.EnumerateArray().Select(e => e.GetString()!).Distinct().Order(StringComparer.Ordinal));
        return confirmed;
    }
}

/// <summary>Times of entries: ISO 8601 with offset.</summary>
public static class EntryTime
{
    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
        "yyyy-MM-dd'T'HH:mm:ss'Z'", "yyyy-MM-dd'T'HH:mm'Z'", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'",
    ];

    /// <summary>The years that are taken, in words.</summary>
    internal const string Years = "between the years 1900 and 2200";

    /// <summary>Reads a time; false where it is none, has no offset, or lies outside the years 1900 to 2200.</summary>
    public static bool TryRead(string text, out DateTimeOffset at) => TryReadAnyYear(text, out at) && IsTaken(at);

    /// <summary>Reads a time of any year, as a book may hold it.</summary>
    internal static bool TryReadAnyYear(string text, out DateTimeOffset at) =>
        DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out at);

    /// <summary>Whether an entry may be of that time: one of the years 1900 to 2200.</summary>
    internal static bool IsTaken(DateTimeOffset at) => at.UtcDateTime.Year is >= 1900 and <= 2200;

    /// <summary>Writes a time with its offset, Z for none; fractions of a second only where there are some.</summary>
    public static string Write(DateTimeOffset at) => at.Offset == TimeSpan.Zero
        ? at.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", CultureInfo.InvariantCulture)
        : at.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);
}
