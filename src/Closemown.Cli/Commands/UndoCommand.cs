using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Takes an entry out again, by another entry that says so.</summary>
internal sealed class UndoCommand : CliCommand
{
    private static readonly Argument<string?> Id = new("id") { Description = "the entry, or the start or end of its id; left out: the last one entered", Arity = ArgumentArity.ZeroOrOne };

    public UndoCommand() : base("undo", "take an entry out again; the book keeps both, nothing is ever erased")
    {
        Examples = [("closemown undo", "take out the last entry"), ("closemown undo 5f2a91", "take out the one whose id ends so"), ("closemown book list --last 5", "see the last entries and their ids")];
        Arguments.Add(Id);
        Options.Add(CommonOptions.At);
    }

    public override int Do(Call call)
    {
        call.Read().Dispose();
        using var open = call.Write();
        var target = call.Parsed.GetValue(Id) is { } id ? EntryPick.Find(open, id) : Last(open);
        var json = new JsonObject { ["kind"] = "void", ["voids"] = target.Id.ToString("D") };
        if (call.Parsed.GetValue(CommonOptions.At) is not null) json["at"] = EntryTime.Write(call.Now);
        var answer = AddCommand.Put(open, json, out _);
        if (call.Json) call.Answer(answer);
        else
        {
            var what = target.Voids is null ? "Taken out" : "Taken back";
            foreach (var line in Wrap.Text($"{what}: {EntryWords.Short(target, call.Style)}, of {EntryWords.When(target.At)}. To have it back: closemown undo {answer["id"]!.GetValue<string>()[^6..]}", call.Screen.Width)) call.Screen.Line(line);
        }
        return ExitCodes.Done;
    }

    private static Entry Last(OpenBook open)
    {
        var standing = open.Desk.Standing.Select(e => e.Id).ToHashSet();
        return open.Desk.Arrived.LastOrDefault(e => standing.Contains(e.Id)) ?? throw CliFault.Refused("The book has no entry to take out.", "closemown book list shows what it holds.");
    }
}
