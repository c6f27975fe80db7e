using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A book opened by a command, and the conversation about it.</summary>
internal sealed class OpenBook : IDisposable
{
    private static readonly JsonSerializerOptions OneLine = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public OpenBook(IEntryStore book, Call call, Func<DateTimeOffset>? clock = null)
    {
        Book = book;
        Talk = new Conversation(book, call.Worth, Phrasing.Plain, new IdMaker().Next, clock ?? (() => call.Now), call.Around.Time.GetLocalNow) { BugMet = call.Screen.Tell };
    }

    public IEntryStore Book { get; }

    public Conversation Talk { get; }

    public Desk Desk => Talk.Desk;

    /// <summary>Asks as a program would; a refusal becomes a fault.</summary>
    public JsonObject Ask(JsonObject question)
    {
        using var document = JsonDocument.Parse(question.ToJsonString());
        return Checked(Talk.Say(document.RootElement));
    }

    /// <summary>The answer, or a fault where it is a refusal.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="kind">The kind of entry it answers, for an example of how one is typed.</param>
    public static JsonObject Checked(JsonObject answer, string? kind = null)
    {
        if (answer["ok"]!.GetValue<bool>()) return answer;
        var error = answer["error"]!;
        var field = error["field"]!.GetValue<string>();
        var message = error["message"]!.GetValue<string>();
        if (error["entry"] is { } entry)
            throw new CliFault(ExitCodes.Refused, message, $"{error["remedy"]!.GetValue<string>()}\nNothing typed is lost; this line can be entered with closemown book import:\n{entry.ToJsonString(OneLine)}") { Json = answer };
        var remedy = error["code"]!.GetValue<string>() switch
        {
            FaultCodes.Implausible => $"Correct it, or if it is right as it is, repeat with --confirm {field}.",
            FaultCodes.Missing when kind is not null && ShortForms.Examples.TryGetValue(kind, out var example) => $"Write it like closemown add {example}",
            _ => error["remedy"]!.GetValue<string>(),
        };
        throw new CliFault(error["code"]!.GetValue<string>() == BugFault.Code ? ExitCodes.Bug : ExitCodes.Refused, field.Length > 0 && field != "kind" ? $"{field}: {message}" : message, remedy) { Json = answer };
    }

    /// <summary>The person's words for a unit.</summary>
    public Phrasing Words(string unit, WritingStyle style) => new(style, Desk.Track(unit).Unit.AdjusterStep);

    public void Dispose() => Book.Dispose();
}
