using Closemown.Book;
using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Enters a reading, or something done.</summary>
internal sealed class AddCommand : CliCommand
{
    private static readonly Argument<string[]> What = new("words") { HelpName = "WORDS", Description = "words and numbers in any order that makes sense (- for a station not read), or field=value", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string> By = new("--by") { Description = "who read or did it", HelpName = "NAME" };
    private static readonly Option<string> Note = new("--note") { Description = "a note", HelpName = "TEXT" };
    private static readonly Option<string> Voids = new("--voids") { Description = "the entry that this one replaces; its time is kept unless --at is given", HelpName = "ID" };

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
            ("closemown add mow 20min green", "the area's name stands anywhere"),
            ("closemown add wish 4 mm by 1 June tue fri", "height, by when, days for mowing"),
            ("closemown add water 5mm yesterday", "a day among the words; fri is the last Friday"),
            ("closemown add topdress 1 kg/m2", "a work by its own word"),
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
        var entry = Typed(call);
        SlipAsked.Settle(entry, call.Screen, Asking.Of(call), f => f.Name);
        using var open = Opened(call, entry);
        var answer = Put(open, Envelope(call, open, entry.Json(), entry), out var taken);
        if (call.Json) call.Answer(answer);
        else Tell(call, open, taken, entry);
        return ExitCodes.Done;
    }

    /// <summary>Puts an entry into the book.</summary>
    public static JsonObject Put(OpenBook open, JsonObject json, out Entry taken)
    {
        using var document = JsonDocument.Parse(json.ToJsonString());
        var answer = OpenBook.Checked(open.Talk.Say(document.RootElement), json["kind"]!.GetValue<string>());
        // A forecast older than one that is kept is taken note of, but not kept.
        if (answer["superseded"] is not null)
            throw new CliFault(ExitCodes.Refused, "A later forecast for that day is in the book: this one is not kept.", "Nothing need be done.") { Json = answer };
        taken = open.Book.Find(Guid.Parse(answer["id"]!.GetValue<string>())) ?? throw new InvalidOperationException("Bug in AddCommand: the entry just put in is not in the book.");
        return answer;
    }

    /// <summary>Opens the book; where it cannot be opened, what was typed is handed back.</summary>
    private static OpenBook Opened(Call call, TypedEntry entry)
    {
        try
        {
            return call.Write();
        }
        catch (BookException e)
        {
            throw CliFault.Refused(e.Message, $"{e.Remedy}\nNothing typed is lost; this line can be entered then with closemown pipe:\n{Conversation.Text(entry.Json())}");
        }
    }

    private static TypedEntry Typed(Call call)
    {
        var name = call.Parsed.GetValue(Kind);
        if (name is null) throw CliFault.Usage("add needs to know what.", "Write it like closemown add paper-cut cuts cuts folds; closemown add --help lists the kinds.");
        if (KindNames.Find(name) is not var (kind, implied)) throw KindNames.None(name);
        if (kind.Name == VoidEntry.Name) throw CliFault.Refused("A void is entered by another command.", "Write closemown undo ID.");
        var today = DateOnly.FromDateTime(call.Now.DateTime);
        var entry = new TypedEntry(kind, call.Style, new BookNames(() => Names(call)), today);
        IReadOnlyList<string> words = [.. implied, .. call.Parsed.GetValue(What) ?? []];
        // "add area green …", "add unit mower …": what is described is named first.
        if (kind.Name is AreaEntry.Name or UnitEntry.Name && words is [{ Length: > 0 } first, ..] && char.IsLetter(first[0]) && !first.Contains('=', StringComparison.Ordinal) && !LooseWords.Known(kind).Contains(first, StringComparer.OrdinalIgnoreCase) && FieldNames.Find(kind, first) is null)
        {
            if (kind.Name == AreaEntry.Name) entry.Area = first;
            else entry.Unit = first;
            words = [.. words.Skip(1)];
        }
        // "add wish 4mm --by 2026-05-01": nobody is called that.
        if (kind.Name == WishEntry.Name && call.Parsed.GetValue(By) is { } by && DayTyped.Read([by], 0, today, ahead: true, out _) > 0) entry.Set(kind.Fields[kind.IndexOf("byDate")], by);
        ShortForms.Read(entry, kind.Name == WeatherEntry.Name ? WeatherWords.Read(words, today, call.Style) : words);
        foreach (var field in call.Parsed.GetValue(Confirm) ?? []) entry.ConfirmNamed(field);
        return entry;
    }

    private static (IReadOnlyList<string>, IReadOnlyList<string>) Names(Call call)
    {
        if (!File.Exists(call.Location.Path)) return ([], []);
        using var open = call.Read();
        return ([.. open.Desk.Standing.Select(e => e.Area).OfType<string>().Distinct()], [.. open.Desk.Units]);
    }

    private static JsonObject Envelope(Call call, OpenBook open, JsonObject json, TypedEntry entry)
    {
        if ((call.Parsed.GetValue(CommonOptions.Unit) ?? entry.Unit) is { } unit) json["unit"] = Same("unit", unit, entry.Unit);
        else if (entry.Kind.Belongs == Belongs.Unit) json["unit"] = call.UnitOf(open.Talk);
        if ((call.Parsed.GetValue(CommonOptions.Area) ?? entry.Area) is { } area) json["area"] = Same("area", area, entry.Area);
        else if (entry.Kind.Belongs == Belongs.Area && entry.Names.Areas is { Count: > 1 } several)
            throw CliFault.Refused($"The book has several areas: {string.Join(", ", several)}.", $"Say which, anywhere among the words: closemown add {ShortForms.Examples[entry.Kind.Name]} {CommandWord.Of(several[0])}");
        // Where there is one area, it is the one that was mown.
        else if (entry.Kind.Name == MowEntry.Name && entry.Names.Areas is [var only]) json["area"] = only;
        if (call.Parsed.GetValue(CommonOptions.At) is { } at)
        {
            if (entry.Day is not null && !TimeOnly.TryParse(at, CultureInfo.InvariantCulture, out _)) throw CliFault.Refused("The day is given twice.", "Give it once: --at, or among the words.");
            json["at"] = EntryTime.Write(entry.Day is { } told ? call.On(told, TimeOnly.FromDateTime(call.Now.DateTime)) : call.Now);
        }
        else if (entry.Day is { } day && day != entry.Today) json["at"] = EntryTime.Write(call.On(day, new TimeOnly(12, 0)));
        // A correction is of what was read or done then; of two of the same entry the later counts, by a thousandth of a second.
        else if (Replaced(call, open) is { } old && entry.Day is null) json["at"] = EntryTime.Write(old.At.AddMilliseconds(open.Desk.Arrived.Count(e => e.Voids == old.Id)));
        if (call.Parsed.GetValue(By) is { } by && !(entry.Kind.Name == WishEntry.Name && DayTyped.Read([by], 0, entry.Today!.Value, ahead: true, out _) > 0)) json["by"] = by;
        if (call.Parsed.GetValue(Note) is { } note) json["note"] = note;
        if (Replaced(call, open) is { } target) json["voids"] = target.Id.ToString("D");
        return json;
    }

    private static Entry? Replaced(Call call, OpenBook open) => call.Parsed.GetValue(Voids) is { } voids ? EntryPick.Find(open, voids) : null;

    private static string Same(string what, string name, string? said) =>
        said is null || said == name ? name : throw CliFault.Refused($"The words name the {what} {said}, the option {name}.", "Name one.");

    private static void Tell(Call call, OpenBook open, Entry taken, TypedEntry entry)
    {
        var odd = taken.Unit is { } unit && open.Desk.Units.Contains(unit) && open.Desk.Track(unit).Memory.Unusual is { } u && u.Entry.Id == taken.Id
            ? $" Not like this mower: {Chance.OneIn(u.Surprise)}. Read it again before anything is turned." : "";
        var nowhere = taken.Is(MowEntry.Kind) && taken.Area is null && entry.Names.Areas is { Count: > 1 } areas ? $" It counts for none of the areas; was it one of them? {string.Join(", ", areas)}: closemown undo, then name it." : "";
        var instead = taken.Voids is null ? "" : entry.Day is null && call.Parsed.GetValue(CommonOptions.At) is null
            ? $" It replaces the other and keeps its time, {EntryWords.When(taken.At)}." : $" It replaces the other; its time is {EntryWords.When(taken.At)}.";
        foreach (var line in Wrap.Text($"Taken: {EntryWords.Short(taken, call.Style)}{(entry.Day is { } d ? $", on {EntryWords.Day(d)}" : "")}.{instead}{odd}{nowhere}", call.Screen.Width)) call.Screen.Line(line);
    }
}
