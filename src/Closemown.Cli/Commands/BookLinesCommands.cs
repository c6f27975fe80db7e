using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Writes the book as JSON Lines.</summary>
internal sealed class BookExportCommand : CliCommand
{
    private static readonly Argument<string?> Target = new("file") { HelpName = "FILE", Description = "a new file; left out: standard output", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<bool> Trusted = new("--salvage") { Description = "of a damaged book: the rows that are still what was written, and how many are not" };

    public BookExportCommand() : base("export", "write all entries as JSON Lines; an import makes the same book of them")
    {
        Examples = [("closemown book export entries.jsonl", "into a new file"), ("closemown book export | grep paper-cut", "into another program"), ("closemown book export --salvage --book damaged.closemown saved.jsonl", "what can still be trusted of a damaged book")];
        Arguments.Add(Target);
        Options.Add(Trusted);
    }

    public override int Do(Call call)
    {
        var salvaged = call.Parsed.GetValue(Trusted) ? Salvage.Read(call.Location.Path) : null;
        using var open = salvaged is null ? call.Read() : null;
        ExportReport Write(TextWriter to) => salvaged is null ? Exporter.Write(open!.Book, to) : Exporter.Write(salvaged, to);
        if (call.Parsed.GetValue(Target) is not { } path)
        {
            Write(call.Screen.Data);
            TellUntrusted(call, salvaged);
            return ExitCodes.Done;
        }
        var report = Exporter.ToFile(path, Write);
        if (call.Json) call.Answer(new JsonObject { ["ok"] = true, ["path"] = Path.GetFullPath(path), ["entries"] = report.Entries, ["weather"] = report.Weather });
        else call.Screen.Line($"Written: {Path.GetFullPath(path)} ({report.Entries} entries, {report.Weather} of weather).");
        TellUntrusted(call, salvaged);
        return ExitCodes.Done;
    }

    private static void TellUntrusted(Call call, Salvaged? salvaged)
    {
        if (salvaged is { Untrusted: > 0 }) call.Screen.Error.Write($"closemown: rows left out that are not what was written: {salvaged.Untrusted}.\n");
        if (salvaged is { Whole: false }) call.Screen.Error.Write("closemown: not all rows could be reached.\n");
    }
}

/// <summary>Reads JSON Lines into the book.</summary>
internal sealed class BookImportCommand : CliCommand
{
    private static readonly Argument<string> Source = new("file") { HelpName = "FILE", Description = "JSON Lines, one entry a line; - for standard input" };
    private static readonly Option<bool> Preview = new("--preview") { Description = "write nothing, and say what would happen" };
    private static readonly Option<bool> AllOrNone = new("--all-or-none") { Description = "one bad line keeps all of them out" };

    public BookImportCommand() : base("import", "read entries from JSON Lines; twice is once")
    {
        Examples = [("closemown book import entries.jsonl --preview", "see first what would happen"), ("closemown book import entries.jsonl", "take the good lines, tell of the bad ones")];
        Arguments.Add(Source);
        Options.Add(Preview);
        Options.Add(AllOrNone);
    }

    public override int Do(Call call)
    {
        var path = call.Parsed.GetRequiredValue(Source);
        if (path != "-" && !File.Exists(path)) throw CliFault.Refused($"There is no file {path}.", "Check the path.");
        var options = new ImportOptions { Preview = call.Parsed.GetValue(Preview), AllOrNone = call.Parsed.GetValue(AllOrNone) };
        using var book = options.Preview && !File.Exists(call.Location.Path) ? BookFile.Open(BookFile.InMemory) : BookFile.Open(call.Location.Path);
        using var lines = path == "-" ? call.Around.Input() : File.OpenRead(path);
        var report = Importer.Read(lines, book, options);
        if (call.Json) call.Answer(Json(report));
        else
        {
            var (did, there) = report.Preview ? ("would enter", "are there already") : ("entered", "were there already");
            call.Screen.Line($"{report.Lines - report.Blank} lines: {report.Added} {did}, {report.AlreadyThere} {there}, {report.Superseded} older forecasts, {report.Withheld} kept out with the others, {report.Bad} bad.");
        }
        foreach (var fault in report.Faults) call.Screen.Error.Write($"closemown: {fault}\n");
        return report.Ok ? ExitCodes.Done : ExitCodes.Refused;
    }

    private static JsonObject Json(ImportReport r) => new()
    {
        ["ok"] = r.Ok,
        ["preview"] = r.Preview,
        ["lines"] = r.Lines,
        ["blank"] = r.Blank,
        ["added"] = r.Added,
        ["alreadyThere"] = r.AlreadyThere,
        ["superseded"] = r.Superseded,
        ["withheld"] = r.Withheld,
        ["bad"] = r.Bad,
        ["faults"] = new JsonArray([.. r.Faults.Select(f => (JsonNode)new JsonObject { ["line"] = f.Line, ["code"] = f.Fault.Code, ["field"] = f.Fault.Field, ["message"] = f.Fault.Message, ["remedy"] = f.Fault.Remedy })]),
    };
}

/// <summary>Lists entries.</summary>
internal sealed class BookListCommand : CliCommand
{
    private static readonly Option<int?> Last = new("--last") { Description = "only so many, the newest", HelpName = "N" };

    public BookListCommand() : base("list", "the entries in order of time, with the ends of their ids; those taken out are marked")
    {
        Examples = [("closemown book list --last 10", "the last ten"), ("closemown book list --json", "whole, as JSON Lines")];
        Options.Add(Last);
        Options.Add(CommonOptions.Unit);
    }

    public override int Do(Call call)
    {
        if (call.Parsed.GetValue(Last) is <= 0) throw CliFault.Usage("--last needs a number above 0.", "Write --last 10.");
        using var open = call.Read();
        var unit = call.Parsed.GetValue(CommonOptions.Unit) is null ? null : call.UnitOf(open.Talk);
        var entries = open.Desk.Arrived.Where(e => unit is null || e.Unit == unit).Order(Entries.EntryOrder.Instance).ToList();
        if (call.Parsed.GetValue(Last) is { } n) entries = [.. entries.TakeLast(n)];
        var standing = open.Desk.Standing.Select(e => e.Id).ToHashSet();
        foreach (var e in entries)
        {
            if (call.Json) call.Screen.Line(e.Json);
            else
            {
                var mark = e.Is(VoidEntry.Kind) ? $"void: takes out {e.Voids!.Value.ToString("D")[^6..]}" : standing.Contains(e.Id) ? EntryWords.Short(e, call.Style) : $"(taken out) {EntryWords.Short(e, call.Style)}";
                var of = open.Desk.Units.Count > 1 && e.Unit is not null ? $" [{e.Unit}]" : "";
                foreach (var line in Wrap.Beside($"{EntryWords.When(e.At),-19} {e.Id.ToString("D")[^6..]}", mark + of, call.Screen.Width, 28)) call.Screen.Line(line);
            }
        }
        return ExitCodes.Done;
    }
}
