using System.Text.Json;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Fuzzing;

/// <summary>What holds for every reader.</summary>
public static class Laws
{
    private const int ShownAtMost = 300;

    /// <summary>Something that must be so.</summary>
    public static void Must(bool so, string law, string seen)
    {
        if (!so) throw new LawBrokenException(law, seen.Length > ShownAtMost ? seen[..ShownAtMost] + "…" : seen);
    }

    /// <summary>A fault says what is wrong and what to do.</summary>
    public static void Told(string message, string remedy)
    {
        Must(!string.IsNullOrWhiteSpace(message), "a fault says what is wrong", remedy);
        Must(!string.IsNullOrWhiteSpace(remedy), "a fault says what to do", message);
    }

    /// <summary>The faults of a line: either there are some, each with its code, or there is an entry.</summary>
    public static void Faults(IReadOnlyList<EntryFault> faults, Entry? entry)
    {
        Must(faults.Count > 0 == entry is null, "a line has faults or is an entry", $"{faults.Count} faults, {entry}");
        foreach (var fault in faults)
        {
            Told(fault.Message, fault.Remedy);
            Must(fault.Code.Length > 0, "a fault has a code", fault.Message);
        }
    }

    /// <summary>What was accepted can be read back: from its one line, as a stored entry, to the same line.</summary>
    public static void ReadBack(Entry entry)
    {
        OneLine(entry.Json);
        var faults = EntryReader.Read(entry.Json, EntryContext.Stored, out var again);
        Must(again is not null, "what is accepted can be read back", again is null ? $"{faults[0]} {entry.Json}" : "");
        Must(again!.Json == entry.Json, "what is read back is the same line", $"{entry.Json} → {again.Json}");
    }

    /// <summary>Text that stands on one line of JSON Lines.</summary>
    public static void OneLine(string text) => Must(!text.AsSpan().ContainsAny('\n', '\r'), "an answer or entry is one line", text);

    /// <summary>An answer: one line, an object with <c>ok</c>, and where it is refused what is wrong and what to do.</summary>
    public static bool Answer(string line)
    {
        OneLine(line);
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(line);
        }
        catch (JsonException e)
        {
            throw new LawBrokenException("an answer is JSON", $"{e.Message} {line}");
        }
        using (document)
        {
            var answer = document.RootElement;
            Must(answer.ValueKind == JsonValueKind.Object && answer.TryGetProperty("ok", out var ok) && ok.ValueKind is JsonValueKind.True or JsonValueKind.False,
                "an answer says whether it is ok", line);
            // An entry that was taken may carry one beside its ok.
            Must(!answer.TryGetProperty("bug", out _), "no answer tells of a bug", line);
            if (answer.GetProperty("ok").GetBoolean()) return true;
            Must(answer.TryGetProperty("error", out var error) && error.ValueKind == JsonValueKind.Object, "a refusal holds an error", line);
            string Text(string name) => error.TryGetProperty(name, out var v) && v.ValueKind == JsonValueKind.String ? v.GetString()! : "";
            Must(Text("code").Length > 0, "a fault has a code", line);
            Must(Text("code") != BugFault.Code, "no answer tells of a bug", line);
            Told(Text("message"), Text("remedy"));
            return false;
        }
    }
}
