using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pages;
using Closemown.Pipe;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>The workshop as one visitor's page sees it.</summary>
internal sealed class VisitorWorkshop(Workshop workshop, VisitorLook look, ServeLimits limits) : IWorkshop
{
    public string? Warning => workshop.Damage is { } damage ? $"{damage.Warning} {damage.Remedy}" : null;

    public long Sequence => workshop.Stamp.Entries;

    public DateTimeOffset AskedAt => workshop.AskedAt;

    public event EventHandler<BookChangedEventArgs>? Changed
    {
        add => workshop.Changed += value;
        remove => workshop.Changed -= value;
    }

    public async Task<JsonObject> Ask(JsonObject question, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        // What asks nothing could be an entry, and a question changes nothing.
        if (!question.ContainsKey("ask") || question.ContainsKey("kind")) return Conversation.Refused([NoQuestion]);
        return JsonNode.Parse(await workshop.Ask(Conversation.Text(question), stop, look.WritingStyle))!.AsObject();
    }

    public async Task<IReadOnlyList<JsonObject>> Append(IReadOnlyList<JsonObject> entries, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var answers = new List<JsonObject>();
        foreach (var entry in entries) answers.Add(JsonNode.Parse(await workshop.Say(Conversation.Text(entry), stop))!.AsObject());
        return answers;
    }

    public Task<BookSlice> Read(long after, string? kind, int limit, CancellationToken stop = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(limit, 1000);
        var slice = workshop.Read(after, kind, limit, stop);
        foreach (var row in slice.Entries) row["said"] = EntryTelling.Said(row["entry"]!.AsObject(), look.WritingStyle);
        return Task.FromResult(slice);
    }

    public Task<EntryTold?> Find(Guid id, CancellationToken stop = default) => workshop.Tell(id, look.WritingStyle, stop);

    public async Task<EntryTold?> Undoable(string? unit = null, CancellationToken stop = default) =>
        await workshop.LookUp(talk => EntryTelling.Last(talk.Desk, unit)?.Id, stop) is { } last ? await Find(last, stop) : null;

    public Task<BookPage> Leaf(BookSought sought, CancellationToken stop = default) => workshop.LookUp(talk => BookLeaf.Of(talk.Desk, sought, look.WritingStyle), stop);

    public async Task<ImportTold> Import(string lines, bool preview, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var count = lines.AsSpan().Count('\n') + 1;
        if (count > limits.RequestLines) return new(true, count, 0, 0, 0, 1, [new(limits.RequestLines + 1, $"More than {limits.RequestLines} lines at once.", "Send them in parts, or at the machine type: closemown book import FILE")]);
        var report = await workshop.Import(lines, preview, stop);
        return new(report.Preview, report.Lines - report.Blank, report.Added, report.AlreadyThere, report.Superseded, report.Bad, [.. report.Faults.Select(f => new LineTold(f.Line, f.Fault.Field.Length > 0 ? $"{f.Fault.Field}: {f.Fault.Message}" : f.Fault.Message, f.Fault.Remedy))]);
    }

    /// <summary>Said of what is no question.</summary>
    public static EntryFault NoQuestion { get; } = new(FaultCodes.Missing, "ask", "The object is no question.", "Write {\"ask\":\"today\"}, without \"kind\"; entries go to /entries.");
}
