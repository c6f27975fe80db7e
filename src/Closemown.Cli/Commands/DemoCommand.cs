using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>An invented mower's book, and what its owner would see today.</summary>
internal sealed class DemoCommand : CliCommand
{
    private static readonly string[] FileNames = ["ferncombe.jsonl", "ferncombe-care.jsonl", "ferncombe-weather.jsonl"];

    private static readonly Option<bool> Serve = new("--serve") { Description = "serve the pages over the invented book; the options below are those of closemown serve" };

    public DemoCommand() : base("demo", "see it at work on an invented mower; nothing of yours is touched")
    {
        Examples = [("closemown demo", "what its owner would see today"), ("closemown demo --words uk --gap thou", "in other words and units"), ("closemown demo --serve", "the pages over the invented book")];
        Options.Add(Serve);
        ServeOrder.AddTo(this);
    }

    public override int Do(Call call)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("closemown-demo-").FullName, BookLocation.FileName);
        Fill(path);
        if (call.Parsed.GetValue(Serve)) return ServeOrder.Of(call, path, timeOfTheBook: true).Start(call);
        using var book = BookFile.Open(path);
        var at = book.ReadAll().Select(s => s.Entry.At).Max();
        using var open = new OpenBook(book, call, () => at);
        var unit = Unit(open.Desk);
        if (call.Json)
        {
            var answer = new JsonObject { ["ok"] = true, ["invented"] = true, ["book"] = path };
            foreach (var ask in (string[])["next", "steel", "height", "today"]) answer[ask] = open.Ask(new JsonObject { ["ask"] = ask, ["unit"] = unit })[ask]!.DeepClone();
            if (open.Desk.Areas.FirstOrDefault() is { } area)
            {
                foreach (var ask in (string[])["turf", "plan"]) answer[ask] = open.Ask(new JsonObject { ["ask"] = ask, ["area"] = area })[ask]!.DeepClone();
            }
            call.Answer(answer);
            return ExitCodes.Done;
        }
        Tell(call, open, unit, at);
        call.Screen.Out.Flush();
        call.Screen.Error.Write($"The invented book lies at {path}; try {call.Around.Called} next --book {path}\n");
        return ExitCodes.Done;
    }

    private static void Fill(string path)
    {
        using var book = BookFile.Open(path);
        foreach (var name in FileNames)
        {
            using var lines = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "demo", name));
            var report = Importer.Read(lines, book, new ImportOptions { AllOrNone = true });
            if (!report.Ok) throw CliFault.Refused($"The invented book has a fault in {report.Faults[0]}", "This is a fault of the program.");
        }
    }

    private static void Tell(Call call, OpenBook open, string unit, DateTimeOffset at)
    {
        var screen = call.Screen;
        foreach (var line in Wrap.Text($"An invented mower, \"{unit}\", with {open.Desk.Arrived.Count} entries from {Day(open.Desk.Standing[0].At)} to {Day(at)}. Mower, owner and readings are made up.", screen.Width)) screen.Line(line);
        screen.Line();
        SteelCommand.Tell(call, open, unit, draw: true);
        screen.Line();
        var advice = Planner.Next(open.Desk, new NextQuestion(unit, at, PriceOfMinute: call.Preferences.PriceOfMinute), call.Worth);
        foreach (var line in new StepText(screen, open.Words(unit, call.Style), call.Style).Lines(advice)) screen.Line(line);
        if (advice.Step.Cautions.Count == 0)
        {
            // Said earlier in this sitting; a newcomer has not seen it.
            foreach (var line in Wrap.Beside("Caution", open.Words(unit, call.Style).Say(Cautions.Hands), screen.Width, 12)) screen.Line(screen.Ink(Tone.Danger, line));
        }
        if (open.Desk.HeightTrack(unit).Readings > 0)
        {
            screen.Line();
            screen.Line(screen.Ink(Tone.Strong, "Its height"));
            var wish = open.Desk.Standing.LastOrDefault(e => e.Is(WishEntry.Kind));
            HeightCommand.Tell(call, open, unit, wish?.Area, null, wish?[WishEntry.CutMm], wet: false, draw: true);
        }
        foreach (var plan in TurfToday.All(open.Desk, at))
        {
            screen.Line();
            screen.Line(screen.Ink(Tone.Strong, "Its turf"));
            foreach (var line in TurfSpeech.Of(plan.Today).Concat(PlanSpeech.Coming(plan)).SelectMany(s => Wrap.Text(new Phrasing(call.Style).Say(s), screen.Width))) screen.Line(line);
        }
        screen.Line();
        screen.Line(screen.Ink(Tone.Strong, "To start your own book"));
        var called = call.Around.Called;
        screen.Line($"  {called} new --unit mower --blades 10");
        screen.Line($"  {called} add paper-cut cuts cuts folds");
        screen.Line($"  {called} next");
        screen.Line($"  {called} add gauge 5.1 5.2");
        screen.Line($"  {called} height --cut 4mm");
        screen.Line($"  {called} add area green --m2 200 --lat 51.5");
        screen.Line($"  {called} plan");
    }

    private static string Day(DateTimeOffset at) => at.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);

    private static string Unit(Desk desk) => desk.Standing.Last(e => e.Unit is not null).Unit!;
}
