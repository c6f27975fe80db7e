using System.Globalization;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>Reads one JSON object into an entry, or says everything that is wrong with it.</summary>
public static class EntryReader
{
    /// <summary>The longest line taken, in characters.</summary>
    public const int MaxLineLength = 65536;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = 16, AllowDuplicateProperties = false };

    private static readonly string[] Envelope = ["v", "id", "at", "kind", "unit", "area", "by", "note", "typed", "voids", "confirmed"];

    /// <summary>Reads a line of JSON.</summary>
    /// <param name="line">One JSON object.</param>
    /// <param name="context">What may be left out.</param>
    /// <param name="entry">The entry, or null.</param>
    /// <returns>The faults; empty where the entry was read.</returns>
    public static IReadOnlyList<EntryFault> Read(string line, EntryContext context, out Entry? entry)
    {
        ArgumentNullException.ThrowIfNull(line);
        entry = null;
        if (TryParse(line, out var document, out var fault) is false) return [fault!];
        using (document)
        {
            return Read(document!.RootElement, context, out entry);
        }
    }

    /// <summary>Parses a line into JSON, or says why it is none. The caller disposes the document.</summary>
    public static bool TryParse(string line, out JsonDocument? document, out EntryFault? fault)
    {
        ArgumentNullException.ThrowIfNull(line);
        document = null;
        fault = null;
        if (line.Length > MaxLineLength)
        {
            fault = new(FaultCodes.BadJson, "", $"The line has {line.Length} characters.", $"A line holds at most {MaxLineLength}; split it into several entries.");
            return false;
        }
        try
        {
            document = JsonDocument.Parse(line, Options);
            if (document.RootElement.ValueKind == JsonValueKind.Object) return true;
            fault = new(FaultCodes.BadJson, "", "The line is not a JSON object.", """Write one object a line, like {"kind":"clicks","left":1,"right":1}.""");
        }
        catch (JsonException e)
        {
            fault = new(FaultCodes.BadJson, "", $"The line is not JSON (at character {(e.BytePositionInLine ?? 0) + 1}).", """Write one object a line, like {"kind":"clicks","left":1,"right":1}; each name once.""");
        }
        catch (InvalidOperationException)
        {
            fault = BrokenEscape();
        }
        catch (ArgumentException)
        {
            fault = new(FaultCodes.BadJson, "", "The line holds characters that are not text.", "Save it as UTF-8.");
        }
        document?.Dispose();
        document = null;
        return false;
    }

    /// <summary>Reads a JSON object that is already parsed.</summary>
    public static IReadOnlyList<EntryFault> Read(JsonElement line, EntryContext context, out Entry? entry)
    {
        ArgumentNullException.ThrowIfNull(context);
        entry = null;
        try
        {
            return ReadObject(line, context, out entry);
        }
        catch (InvalidOperationException)       // half a surrogate pair, which JSON may spell but text may not hold
        {
            return [BrokenEscape()];
        }
    }

    private static List<EntryFault> ReadObject(JsonElement line, EntryContext context, out Entry? entry)
    {
        entry = null;
        var faults = new List<EntryFault>();
        var found = line.TryGetProperty("kind", out var k) && k.ValueKind == JsonValueKind.String ? k.GetString() : null;
        if (found is null)
        {
            faults.Add(new(FaultCodes.Missing, "kind", "The entry does not say what kind it is.", $"Add \"kind\": one of {string.Join(", ", Kinds.All.Select(x => x.Name))}."));
            return faults;
        }
        if (Kinds.Find(found) is not { } kind)
        {
            faults.Add(UnknownKind(found));
            return faults;
        }
        var head = new EnvelopeReader(line, kind, context, faults).Read();
        var confirmed = context.AsksPlausible ? head.Confirmed : null;
        var values = new object?[kind.Fields.Count];
        var others = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var property in line.EnumerateObject())
        {
            if (property.Value.ValueKind == JsonValueKind.Null || Array.IndexOf(Envelope, property.Name) >= 0) continue;
            var i = kind.IndexOf(property.Name);
            if (i >= 0)
            {
                values[i] = FieldReader.Read(kind, kind.Fields[i], property.Value, confirmed, faults);
            }
            else
            {
                if (kind.OtherFieldsAreNumbers && property.Value.ValueKind != JsonValueKind.Number)
                    faults.Add(new(FaultCodes.BadValue, property.Name, "The value is not a number.", "Write a number, in mg/kg."));
                others[property.Name] = Canonical.Text(property.Value);
            }
        }
        Completeness.Check(kind, values, others.Count, head.Voids is not null, faults);
        if (faults.Count > 0) return faults;
        entry = new Entry(kind, values)
        {
            Id = head.Id,
            At = head.At,
            Unit = head.Unit,
            Area = head.Area,
            By = head.By,
            Note = head.Note,
            Voids = head.Voids,
            Typed = head.Typed,
            Confirmed = head.Confirmed,
            Others = [.. others],
        };
        entry.Json = Canonical.Line(entry);
        return faults;
    }

    private static EntryFault BrokenEscape() =>
        new(FaultCodes.BadJson, "", "The line holds a broken character escape.", "Write the character itself, in UTF-8.");

    private static EntryFault UnknownKind(string found)
    {
        if (Kinds.Reserved.Contains(found))
            return new(FaultCodes.UnknownKind, "kind", $"The kind \"{found}\" is kept for later.", "Put it into the note of another entry for now.");
        var near = Spelling.Nearest(found, Kinds.All.Select(x => x.Name));
        return new(FaultCodes.UnknownKind, "kind", $"There is no kind \"{Spelling.Clip(found)}\".",
            near is null ? $"Kinds are {string.Join(", ", Kinds.All.Select(x => x.Name))}." : $"Did you mean \"{near}\"?");
    }

    internal static string Invariant(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
