using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>The mowings that bring the turf down to a wished cut.</summary>
internal sealed class StepDownCommand : CliCommand
{
    private static readonly Option<string> Share = new("--share") { Description = "the most of the standing height that one mowing may take: 1/3 (usual), 0.3, 30%", HelpName = "SHARE" };
    private static readonly Option<string> Canopy = new("--canopy") { Description = "what the turf stands at; left out: as last read or mown", HelpName = "LENGTH" };
    private static readonly Option<string> Growth = new("--growth") { Description = "what it grows from one mowing to the next; left out: nothing", HelpName = "LENGTH" };

    public StepDownCommand() : base("step-down", "the mowings from today's standing height down to a wished cut, none taking more than a share of the leaf")
    {
        Examples = [("closemown step-down --area green --cut 4mm", "never more than a third at once"), ("closemown step-down --cut 4mm --share 1/4 --growth 0.8mm", "gentler, and it grows in between")];
        foreach (var option in (Option[])[CommonOptions.Unit, CommonOptions.Area, HeightCommand.Cut, Share, Canopy, Growth]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        var question = new JsonObject
        {
            ["ask"] = "step-down",
            ["area"] = call.Parsed.GetValue(CommonOptions.Area),
            ["cutMm"] = LengthTyped.Mm(call, HeightCommand.Cut),
            ["canopyMm"] = LengthTyped.Mm(call, Canopy),
            ["growthMm"] = LengthTyped.Mm(call, Growth),
            ["share"] = call.Parsed.GetValue(Share) is { } text ? ShareTyped(call, text) : null,
            ["unit"] = call.Parsed.GetValue(CommonOptions.Unit),
        };
        using var open = call.Read();
        AreaTyped.Check(open.Desk, call.Parsed.GetValue(CommonOptions.Area));
        var answer = Asked(open, question);
        if (call.Json)
        {
            call.Answer(answer);
            return ExitCodes.Done;
        }
        var rows = answer["step-down"]!.AsArray();
        var figures = new HeightFigures(call.Style);
        var dated = rows.Any(r => r!["date"] is not null);
        call.Screen.Line($"{(dated ? "day       " : "mowing")}  stands at   set the bench to   cut at   comes off  (in {figures.Unit})");
        foreach (var (row, i) in rows.Select((r, i) => (r!, i)))
        {
            string At(string field) => figures.Number((double)row[field]!);
            call.Screen.Line($"{(dated ? Day((string)row["date"]!) : $"{i + 1,6}")}{At("canopyMm"),11}{At("benchMm"),19}{At("cutMm"),9}{Math.Round(100 * (double)row["shareRemoved"]!).ToString(CultureInfo.InvariantCulture) + " in 100",12}");
        }
        call.Screen.Line();
        foreach (var line in Wrap.Text("Read the standing height before each: where it stands higher than said here, cut that much less low, or mow once more at the height before. Never lower on wilting, frozen or scalped turf.", call.Screen.Width)) call.Screen.Line(line);
        return ExitCodes.Done;
    }

    private static string Day(string date) => DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture).ToString("ddd dd MMM", CultureInfo.InvariantCulture);

    private static JsonObject Asked(OpenBook open, JsonObject question)
    {
        try
        {
            return open.Ask(question);
        }
        catch (CliFault fault) when (question["cutMm"] is null && fault.Json?["error"]?["field"]?.GetValue<string>() == "cutMm")
        {
            throw new CliFault(fault.Exit, "What shall the turf be cut at? No wish is in the book.", "Add --cut 4mm, or enter the wish: closemown add wish 4 --area green") { Json = fault.Json };
        }
    }

    private static double ShareTyped(Call call, string text)
    {
        var bare = text.Trim().TrimEnd('%').Trim();
        if (!Number.TryParse(bare, call.Style, NumberUnit.One, out var share, out var fault)) throw CliFault.Refused($"--share: {fault.Message}", "Write it like --share 1/3, 0.3 or 30%.");
        return text.Contains('%', StringComparison.Ordinal) ? share.Value / 100 : share.Value;
    }
}
