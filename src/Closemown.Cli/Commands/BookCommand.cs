using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Commands about the book's file.</summary>
internal sealed class BookCommand : CommandGroup
{
    public BookCommand() : base("book", "the book itself: where it is, whether it is whole, copies, and its entries")
    {
        Examples = [("closemown book where", "its path, and what decided it"), ("closemown book verify", "check it from end to end"), ("closemown book backup", "a verified copy beside it"), ("closemown book restore BACKUP", "bring a copy back, and keep the present book beside it"), ("closemown book list --last 10", "the last entries"), ("closemown book weather days.csv --area green", "read a weather file")];
        foreach (var command in (CliCommand[])[new BookWhereCommand(), new BookVerifyCommand(), new BookBackupCommand(), new BookRestoreCommand(), new BookExportCommand(), new BookImportCommand(), new BookListCommand(), new BookWeatherCommand()]) Subcommands.Add(command);
    }
}

/// <summary>Where the book is.</summary>
internal sealed class BookWhereCommand : CliCommand
{
    public BookWhereCommand() : base("where", "the book's path, and what decided it") => Examples = [("closemown book where", "path, then why")];

    public override int Do(Call call)
    {
        var where = call.Location;
        var exists = File.Exists(where.Path);
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["path"] = where.Path, ["source"] = where.Source.ToString().ToLowerInvariant(), ["why"] = where.Explanation, ["exists"] = exists }));
        else
        {
            call.Screen.Line(where.Path);
            call.Screen.Note(where.Explanation[(where.Path.Length + 2)..] + (exists ? "" : " It is not there yet."));
        }
        return ExitCodes.Done;
    }
}

/// <summary>Checks the book.</summary>
internal sealed class BookVerifyCommand : CliCommand
{
    public BookVerifyCommand() : base("verify", "check the book from end to end; it is not changed") => Examples = [("closemown book verify", "whole, or what is wrong with it")];

    public override int Do(Call call)
    {
        var report = Verification.Run(call.Location.Path);
        if (call.Json)
        {
            call.Screen.Line(Conversation.Text(new JsonObject
            {
                ["ok"] = report.Ok,
                ["path"] = report.Path,
                ["version"] = report.Version,
                ["entries"] = report.Entries,
                ["weather"] = report.Weather,
                ["head"] = report.Head,
                ["problems"] = new JsonArray([.. report.Problems.Select(p => (JsonNode)new JsonObject { ["table"] = p.Table, ["row"] = p.Row, ["message"] = p.Message, ["remedy"] = p.Remedy })]),
            }));
        }
        else if (report.Ok)
        {
            call.Screen.Line($"Whole: {report.Entries} entries, {report.Weather} of weather.");
            call.Screen.Line($"Its last hash: {report.Head}");
        }
        else
        {
            foreach (var problem in report.Problems) call.Screen.Error.Write($"closemown: {problem}\n");
        }
        return report.Ok ? ExitCodes.Done : ExitCodes.Refused;
    }
}

/// <summary>Makes a copy.</summary>
internal sealed class BookBackupCommand : CliCommand
{
    private static readonly Argument<string?> Target = new("target") { HelpName = "TARGET", Description = "a file or a folder; left out: beside the book, with the date", Arity = ArgumentArity.ZeroOrOne };

    public BookBackupCommand() : base("backup", "make a verified copy, also while the book is in use; nothing is overwritten")
    {
        Examples = [("closemown book backup", "beside the book, with today's date"), ("closemown book backup /media/stick", "into a folder")];
        Arguments.Add(Target);
    }

    public override int Do(Call call)
    {
        var report = Backup.Make(call.Location.Path, call.Parsed.GetValue(Target), DateOnly.FromDateTime(call.Around.Time.GetLocalNow().Date));
        if (call.Json) call.Screen.Line(Conversation.Text(new JsonObject { ["ok"] = true, ["path"] = report.Path, ["entries"] = report.Verified.Entries, ["weather"] = report.Verified.Weather, ["head"] = report.Verified.Head }));
        else call.Screen.Line($"Copied and checked: {report.Path} ({report.Verified.Entries} entries, {report.Verified.Weather} of weather).");
        return ExitCodes.Done;
    }
}
