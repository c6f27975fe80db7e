using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Pipe;

/// <summary>What is said when the program itself has a fault: the same words in the pipe, at the command line and on the server.</summary>
/// <remarks>
/// No question and no entry ends the process: whoever answers catches what nobody foresaw, answers with this, writes <see cref="Trace"/> to
/// its log, and goes on.
/// </remarks>
public static class BugFault
{
    /// <summary>The code of the fault.</summary>
    public const string Code = "bug";

    /// <summary>What to do about it.</summary>
    public const string Remedy = "Do it another way, and report it with the line that the log, or standard error, has of it.";

    /// <summary>The fault.</summary>
    /// <param name="asked">
    /// What was being answered, as a person would name it: "the question next", "a clicks entry", "closemown turf". Cut to 40 characters;
    /// controls and marks of direction are left out.
    /// </param>
    public static EntryFault Of(string asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return new(Code, "", $"The program met a fault of its own while answering {Plain(asked)}. The book is whole.", Remedy);
    }

    /// <summary>The line for the log: which fault, and where in the program. Without the fault's own text, which may hold what was typed.</summary>
    /// <param name="fault">What nobody foresaw.</param>
    public static string Trace(Exception fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        var place = fault.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("Closemown", StringComparison.Ordinal))?.Trim();
        return place is null ? fault.GetType().Name : $"{fault.GetType().Name} {place}";
    }

    /// <summary>Whether an exception is a fault of the program: not of the disk or the book, nor of whoever gave up waiting.</summary>
    public static bool IsOne(Exception e) => e is not (BookException or IOException or OperationCanceledException or OutOfMemoryException or ObjectDisposedException);

    /// <summary>What a line asks, in short: "the question turf", "a mow entry".</summary>
    public static string Named(JsonElement line)
    {
        if (line.ValueKind != JsonValueKind.Object) return "a line";
        if (Name(line, "kind") is { } kind) return $"a {kind} entry";
        return Name(line, "ask") is { } ask ? $"the question {ask}" : "a line";
    }

    /// <summary>The answer on a line, with what was asked.</summary>
    internal static JsonObject Answer(Bug bug)
    {
        var answer = Conversation.Refused([Of(bug.Asked)]);
        answer["error"]!["asked"] = Plain(bug.Asked);
        return answer;
    }

    /// <summary>Nothing in it moves a terminal's cursor or turns a line round.</summary>
    private static string Plain(string asked)
    {
        var plain = new StringBuilder();
        foreach (var rune in asked.EnumerateRunes())
        {
            if (!Hides(Rune.GetUnicodeCategory(rune))) plain.Append(rune);
        }
        return plain.Length == 0 ? "you" : Spelling.Clip(plain.ToString());
    }

    private static bool Hides(UnicodeCategory category) =>
        category is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private static string? Name(JsonElement line, string field)
    {
        try
        {
            return line.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 } name ? name : null;
        }
        catch (InvalidOperationException)          // half a surrogate pair
        {
            return null;
        }
    }
}
