using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Enters a reading, or something done.</summary>
internal sealed class AddCommand : CliCommand
{
    private static readonly Argument<string[]> What = new("words") { HelpName = "WORDS", Description = "words and numbers in the order of the fields (- for one not read), or field=value", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string> By = new("--by") { Description = "who read or did it", HelpName = "NAME" };
    private static readonly Option<string> Note = new("--note") { Description = "a note", HelpName = "TEXT" };
    private static readonly Option<string> Voids = new("--voids") { Description = "the entry that this one replaces", HelpName = "ID" };

    public static Argument<string?> Kind { get; } = new("kind") { HelpName = "KIND", Description = "what is entered; closemown add KIND --help lists its fields", Arity = ArgumentArity.ZeroOrOne };

    public static Option<string[]> Confirm { get; } = new("--confirm") { Description = "a field whose unusual value is right as it is; may be repeated", HelpName = "FIELD" };

    public AddCommand() : base("add", "enter a reading, or something done")
    {
        Examples =
        [
            ("closemown add paper-cut cuts cuts folds", "left, centre, right; - for one not read"),
            ("closemown add contact none light", "two words are left and right"),
            ("closemown add clicks 1 1", "one step in on both sides; \"2 out\" or -2 for out"),
            ("closemown add lap 2 min grit=120", "lapped for two minutes"),
            ("closemown add mow 90 min", "or mow 800 m2"),
            ("closemown add strip 80gsm", "or strip 0.08 mm, strip 3 thou"),
            ("closemown add feeler left=30..50um", "30 goes, 50 does not"),
            ("closemown add paper-cut --help", "the fields of one kind"),
        ];
        Details = [$"Kinds: {string.Join(", ", Kinds.All.Where(k => k.Name != "void").Select(k => k.Name))}. To take something out: closemown undo."];
        Arguments.Add(Kind);
        Arguments.Add(What);
        foreach (var option in (Option[])[CommonOptions.Unit, CommonOptions.Area, CommonOptions.At, By, Note, Voids, Confirm]) Options.Add(option);
    }

    public override int Do(Call call)
    {
        var entry = Typed(call, out var named);
        SlipAsked.Settle(entry, call.Screen, Asking.Of(call), f => f.Name);
        using var open = call.Write();
        var answer = Put(open, Envelope(call, open, entry.Json(), named), out var taken);
        if (call.Json) call.Screen.Line(Conversation.Text(answer));
        else Tell(call, open, taken);
        return ExitCodes.Done;
    }

    /// <summary>Puts an entry into the book.</summary>
    public static JsonObject Put(OpenBook open, JsonObject json, out Entry taken)
    {
        using var document = JsonDocument.Parse(json.ToJsonString());
        var answer = OpenBook.Checked(open.Talk.Say(document.RootElement), json["kind"]!.GetValue<string>());
        taken = open.Book.Find(Guid.Parse(answer["id"]!.GetValue<string>())) ?? throw new InvalidOperationException("Bug in AddCommand: the entry just put in is not in the book.");
        return answer;
    }

    private static TypedEntry Typed(Call call, out string? named)
    {
        named = null;
        var name = call.Parsed.GetValue(Kind);
        if (name is null) throw CliFault.Usage("add needs to know what.", "Write it like closemown add paper-cut cuts cuts folds; closemown add --help lists the kinds.");
        var kind = Kinds.Find(name);
        if (kind is null || kind.Name == "void") throw NoKind(name);
        var entry = new TypedEntry(kind, call.Style);
        IReadOnlyList<string> words = call.Parsed.GetValue(What) ?? [];
        // "add area green …": an area has no loose words of its own but its kind of grass, so the first one is its name.
        if (kind.Name == "area" && words is [var first, ..] && first is not ("cool" or "warm") && !first.StartsWith('-') && !first.Contains('=', StringComparison.Ordinal)) (named, words) = (first, [.. words.Skip(1)]);
        ShortForms.Read(entry, kind.Name == "weather" ? WeatherWords.Read(words, DateOnly.FromDateTime(call.Now.DateTime)) : words);
        foreach (var field in call.Parsed.GetValue(Confirm) ?? []) entry.ConfirmNamed(field);
        return entry;
    }

    private static CliFault NoKind(string name)
    {
        if (name == "void") return CliFault.Refused("A void is entered by another command.", "Write closemown undo ID.");
        var near = Spelling.Nearest(name, Kinds.All.Select(k => k.Name));
        return CliFault.Refused($"There is no kind \"{Spelling.Clip(name)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"Kinds are {string.Join(", ", Kinds.All.Select(k => k.Name))}.");
    }

    private static JsonObject Envelope(Call call, OpenBook open, JsonObject json, string? named)
    {
        var kind = Kinds.Get(json["kind"]!.GetValue<string>());
        if (call.Parsed.GetValue(CommonOptions.Unit) is { } unit) json["unit"] = unit;
        else if (kind.Belongs == Belongs.Unit) json["unit"] = call.UnitOf(open.Talk);
        if (call.Parsed.GetValue(CommonOptions.Area) is { } area) json["area"] = area;
        else if (named is not null) json["area"] = named;
        if (call.Parsed.GetValue(CommonOptions.At) is not null) json["at"] = EntryTime.Write(call.Now);
        if (call.Parsed.GetValue(By) is { } by) json["by"] = by;
        if (call.Parsed.GetValue(Note) is { } note) json["note"] = note;
        if (call.Parsed.GetValue(Voids) is { } voids) json["voids"] = EntryPick.Find(open, voids).Id.ToString("D");
        return json;
    }

    private static void Tell(Call call, OpenBook open, Entry taken)
    {
        var odd = taken.Unit is { } unit && open.Desk.Units.Contains(unit) && open.Desk.Track(unit).Memory.Unusual is { } u && u.Entry.Id == taken.Id
            ? $" Not like this mower: {Chance.OneIn(u.Surprise)}. Read it again before anything is turned." : "";
        foreach (var line in Wrap.Text($"Taken: {EntryWords.Short(taken, call.Style)}.{odd}", call.Screen.Width)) call.Screen.Line(line);
    }
}
