using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Brings a backup back.</summary>
internal sealed class BookRestoreCommand : CliCommand
{
    private static readonly Argument<string> Source = new("backup") { HelpName = "BACKUP", Description = "a copy made by closemown book backup" };
    private static readonly Option<string?> To = new("--to") { Description = "where to; left out: where the book is", HelpName = "PATH" };
    private static readonly Option<bool> Merge = new("--merge") { Description = "bring in what the present book holds beyond the backup, as far as it can still be read" };

    public BookRestoreCommand() : base("restore", "bring a backup back; the book that is there now is kept beside it under a dated name")
    {
        Examples =
        [
            ("closemown book restore book-2026-05-03.closemown", "as it was on that day"),
            ("closemown book restore book-2026-05-03.closemown --merge", "and what came later, as far as it can be read"),
            ("closemown book restore book-2026-05-03.closemown --to look.closemown", "to another place"),
        ];
        Details = ["The backup is checked first, and stays as it is. One rename puts it in place; until then the present book stays where it is."];
        Arguments.Add(Source);
        Options.Add(To);
        Options.Add(Merge);
    }

    public override int Do(Call call)
    {
        var report = Restore.Make(call.Parsed.GetRequiredValue(Source), call.Parsed.GetValue(To) ?? call.Location.Path, call.Around.Time.GetLocalNow().DateTime, call.Parsed.GetValue(Merge));
        if (call.Json) call.Screen.Line(Conversation.Text(Json(report)));
        else foreach (var line in Said(report, call.Parsed.GetValue(Merge))) call.Screen.Line(line);
        return ExitCodes.Done;
    }

    private static IEnumerable<string> Said(RestoreReport r, bool merge)
    {
        yield return $"Restored and checked: {r.Path} ({r.Verified.Entries} entries, {r.Verified.Weather} of weather).";
        if (r.Kept is null) yield break;
        yield return $"The book that was there is kept: {r.Kept}";
        if (r.Untrusted > 0) yield return $"Rows in it that are not what was written, and are left out: {r.Untrusted}.";
        if (!r.ReadWhole) yield return "It could not be read to its end.";
        if (r.Conflicts > 0) yield return $"Entries of which it holds another form than the backup, which counts: {r.Conflicts}.";
        if (r.Lacking == 0) yield return "It holds nothing more that can be read beyond the backup.";
        else if (merge) yield return $"Entries brought in from it that the backup lacks: {r.Merged} of {r.Lacking}.";
        else
        {
            yield return $"Entries in it that the backup lacks: {r.Lacking}. To bring them in:";
            yield return $"  closemown book export --salvage --book {r.Kept} later.jsonl";
            yield return $"  closemown book import --book {r.Path} later.jsonl";
        }
    }

    private static JsonObject Json(RestoreReport r) => new()
    {
        ["ok"] = true,
        ["path"] = r.Path,
        ["entries"] = r.Verified.Entries,
        ["weather"] = r.Verified.Weather,
        ["head"] = r.Verified.Head,
        ["kept"] = r.Kept,
        ["lacking"] = r.Lacking,
        ["merged"] = r.Merged,
        ["conflicts"] = r.Conflicts,
        ["untrusted"] = r.Untrusted,
        ["readWhole"] = r.ReadWhole,
    };
}
