using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>Reads one JSON object into an entry, or says everything that is wrong with it.</summary>
public static class EntryReader
{
    /// <summary>The longest line taken, in characters, as it comes and as it would be kept.</summary>
    public const int MaxLineLength = 65536;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = BadJson.MaxDepth, AllowDuplicateProperties = false };
    private static readonly JsonDocumentOptions OfABook = new() { MaxDepth = 64, AllowDuplicateProperties = false };

    private static readonly string[] Envelope = ["v", "id", "at", "kind", "unit", "area", "by", "note", "typed", "voids", "confirmed"];

    /// <summary>Reads a line of JSON.</summary>
    /// <param name="line">One JSON object.</param>
    /// <param name="context">What may be left out.</param>
    /// <param name="entry">The entry, or null.</param>
    /// <returns>The faults; empty where the entry was read.</returns>
    public static IReadOnlyList<EntryFault> Read(string line, EntryContext context, out Entry? entry)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(context);
        entry = null;
        if (!TryParse(line, context.IsStored, out var document, out var fault)) return [fault!];
        using (document)
        {
            var faults = Read(document!.RootElement, context, out entry);
            if (context.KeepsLine && entry is not null) entry.Json = line;
            return faults;
        }
    }

    /// <summary>Parses a line into JSON, or says why it is none. The caller disposes the document.</summary>
    public static bool TryParse(string line, out JsonDocument? document, out EntryFault? fault) => TryParse(line, stored: false, out document, out fault);

    private static bool TryParse(string line, bool stored, out JsonDocument? document, out EntryFault? fault)
    {
        ArgumentNullException.ThrowIfNull(line);
        document = null;
        fault = null;
        if (line.Length > MaxLineLength && !stored)
        {
            fault = new(FaultCodes.BadJson, "", $"The line has {line.Length} characters.", $"A line holds at most {MaxLineLength}; split it into several entries.");
            return false;
        }
        try
        {
            document = JsonDocument.Parse(line, stored ? OfABook : Options);
            if (document.RootElement.ValueKind == JsonValueKind.Object) return true;
            fault = new(FaultCodes.BadJson, "", "The line is not a JSON object.", """Write one object a line, like {"kind":"clicks","left":1,"right":1}.""");
        }
        catch (JsonException)
        {
            fault = BadJson.Of(line);
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
        var input = context.IsStored ? null : new Asked(context.AsksPlausible ? head.Confirmed : null);
        var values = new object?[kind.Fields.Count];
        var others = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var property in line.EnumerateObject())
        {
            if (property.Value.ValueKind == JsonValueKind.Null || Array.IndexOf(Envelope, property.Name) >= 0) continue;
            var i = kind.IndexOf(property.Name);
            if (i >= 0)
            {
                values[i] = FieldReader.Read(kind, kind.Fields[i], property.Value, input, faults);
            }
            else
            {
                if (input is not null) OtherFields.Check(kind, property, input, faults);
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
        if (context.KeepsLine) return faults;
        entry.Json = Canonical.AsItCame(entry, JsonMarshal.GetRawUtf8Value(line)) ?? Canonical.Line(entry);
        if (!context.IsStored && NotKept(entry) is { } fault)
        {
            entry = null;
            faults.Add(fault);
        }
        return faults;
    }

    /// <summary>Why an entry could not be read back if it were written as it stands; null where it could.</summary>
    /// <remarks>What is written is for ever: so it is read back before, by the reader of books.</remarks>
    private static EntryFault? NotKept(Entry entry)
    {
        if (entry.Json.Length > MaxLineLength)
            return new(FaultCodes.BadValue, "", $"The entry has {entry.Json.Length} characters as it would be kept.", $"An entry holds at most {MaxLineLength}; shorten its texts or split it into several entries.");
        return Read(entry.Json, EntryContext.Stored, out var back) is [] && back!.Json == entry.Json && back.Id == entry.Id && back.At == entry.At ? null
            : new(FaultCodes.BadValue, "", "The entry could not be read back as it would be kept.", "Write it with fewer or plainer fields, and report the line: this is a fault of the program.");
    }

    /// <summary>Whether a line that a book holds is the same entry, though perhaps written in an earlier form.</summary>
    public static bool IsSame(string stored, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (stored == entry.Json) return true;
        return Read(stored, EntryContext.Stored, out var kept) is [] && Canonical.Line(kept!) == Canonical.Line(entry);
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
