using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Starts a book with a unit: by options, or by questions at a terminal. Everything may stay unknown.</summary>
internal sealed class NewCommand : CliCommand
{
    private static readonly (Option<string> Option, string Field, string Question)[] Asked =
    [
        Field("--blades", "blades", "N", "How many blades has the reel?"),
        Field("--reel", "reelMm", "LENGTH", "Its diameter, like 127 mm or 5 in?"),
        Field("--width", "widthMm", "LENGTH", "The width of cut, like 510 mm or 20 in?"),
        Field("--step", "adjusterStep", "click|flat|notch", "What is one step of the adjuster: click, flat or notch?"),
        Field("--click", "clickUm", "LENGTH", "How many of them is one turn, and which thread, like 14 clicks a turn, 1 mm thread?\n  Count them over one whole turn, and measure ten threads with a ruler. Or what one step moves the edge, like 18 um:"),
        Field("--in", "inTurns", "clockwise|anticlockwise", "Which way does an adjuster turn to come in: clockwise or anticlockwise?"),
        Field("--flats", "screwFlats", "N", "How many flats a turn has the nut or head of a height screw, like 6?"),
        Field("--setting", "setting", "light-contact|clear", "How does its maker want it set: light-contact or clear?"),
        Field("--relief", "relief", "yes|no", "Have the blades a relief grind: yes or no?"),
        Field("--grits", "grits", "N,N", "Grits of lapping compound at hand, like 80,120?"),
        Field("--owns", "owns", "WORDS", "What is at hand of strip, feeler, gauge, grinder, torch (with commas)?"),
    ];

    private static readonly Option<string> Strip = new("--strip") { Description = "the paper strip in use, like \"80 gsm\" or 0.1mm", HelpName = "PAPER" };
    private static readonly Argument<string[]> More = new("more") { HelpName = "FIELD=VALUE", Description = "any other field of a unit; closemown add unit --help lists them", Arity = ArgumentArity.ZeroOrMore };

    public NewCommand() : base("new", "start a book with your mower; what you do not know may stay unknown")
    {
        Examples =
        [
            ("closemown new", "at a terminal: it asks, and every answer may be left blank"),
            ("closemown new --unit mower --blades 10 --click \"0.0007 in\" --strip \"80 gsm\"", "without questions"),
            ("closemown new --unit mower", "nothing known yet: that is enough"),
        ];
        Arguments.Add(More);
        Options.Add(CommonOptions.Unit);
        foreach (var (option, _, _) in Asked) Options.Add(option);
        Options.Add(Strip);
        Options.Add(AddCommand.Confirm);
        Options.Add(CommonOptions.At);
    }

    public override int Do(Call call)
    {
        var unit = new TypedEntry(UnitEntry.Kind, call.Style);
        foreach (var (option, field, _) in Asked)
        {
            if (call.Parsed.GetValue(option) is { } text) unit.Set(Spec(field), text);
        }
        ShortForms.Read(unit, call.Parsed.GetValue(More) ?? []);
        foreach (var field in call.Parsed.GetValue(AddCommand.Confirm) ?? []) unit.ConfirmNamed(field);
        var name = call.Parsed.GetValue(CommonOptions.Unit);
        var strip = call.Parsed.GetValue(Strip);
        var ask = Asking.Of(call);
        if (ask is not null && name is null && unit.Count == 0 && strip is null) (unit, name, strip) = Questions(call, ask);
        name ??= "mower";
        SlipAsked.Settle(unit, call.Screen, ask, f => OptionOf(f));
        var paper = strip is null ? null : Paper(call, strip, ask);
        using var open = call.Write();
        if (open.Desk.Standing.Any(e => e.Is(UnitEntry.Kind) && e.Unit == name))
            throw CliFault.Refused($"The book has a unit \"{name}\" already.", $"Give another --unit NAME, or change what is known of this one: closemown add unit blades=10 --unit {CommandWord.Of(name)}");
        var answers = new List<JsonObject> { AddCommand.Put(open, Named(call, unit.Json(), name), out var taken) };
        var told = new List<string> { EntryWords.Short(taken, call.Style) };
        if (paper is not null)
        {
            answers.Add(AddCommand.Put(open, Named(call, paper.Json(), name), out var kept));
            told.Add(EntryWords.Short(kept, call.Style));
        }
        if (call.Json) foreach (var answer in answers) call.Answer(answer);
        else Tell(call, open, name, told);
        return ExitCodes.Done;
    }

    private static (Option<string>, string, string) Field(string option, string field, string value, string question)
    {
        var spec = UnitEntry.Kind.Fields.First(f => f.Name == field);
        return (new Option<string>(option) { HelpName = value, Description = spec.Help }, field, question);
    }

    private static FieldSpec Spec(string field) => UnitEntry.Kind.Fields.First(f => f.Name == field);

    private static string OptionOf(FieldSpec field) => Asked.FirstOrDefault(a => a.Field == field.Name).Option?.Name[2..] ?? field.Name;

    private static (TypedEntry Unit, string? Name, string? Strip) Questions(Call call, Func<string, string?> ask)
    {
        call.Screen.Line("A few questions about your mower. Leave blank what you do not know: unknown is allowed.");
        UnitsAsked.Settle(call, ask);
        var unit = new TypedEntry(UnitEntry.Kind, call.Style);
        var name = Answer(ask, "A short name for it [mower]: ");
        foreach (var (_, field, question) in Asked)
        {
            while (Answer(ask, question + " ") is { } text)
            {
                try
                {
                    unit.Set(Spec(field), text);
                    break;
                }
                catch (TypedFault fault)
                {
                    call.Screen.Line($"{fault.Message}\n  {fault.Remedy.Replace("\n", "\n  ", StringComparison.Ordinal)}");
                }
            }
        }
        return (unit, name, Answer(ask, "What paper do you use for the strip, like 80 gsm or 0.1 mm? "));
    }

    private static string? Answer(Func<string, string?> ask, string question) => ask(question)?.Trim() is { Length: > 0 } text ? text : null;

    private static TypedEntry Paper(Call call, string text, Func<string, string?>? ask)
    {
        var strip = new TypedEntry(StripEntry.Kind, call.Style);
        ShortForms.Read(strip, [text]);
        SlipAsked.Settle(strip, call.Screen, ask, f => f.Name);
        return strip;
    }

    private static JsonObject Named(Call call, JsonObject json, string unit)
    {
        json["unit"] = unit;
        if (call.Parsed.GetValue(CommonOptions.At) is not null) json["at"] = EntryTime.Write(call.Now);
        return json;
    }

    private static void Tell(Call call, OpenBook open, string name, List<string> told)
    {
        var screen = call.Screen;
        foreach (var line in Wrap.Text($"Taken for \"{name}\": {string.Join("; ", told)}.", screen.Width)) screen.Line(line);
        screen.Line($"The book is {open.Book.Where}");
        screen.Line();
        screen.Line("Next: closemown next, or enter what you find: closemown add paper-cut cuts cuts folds");
    }
}
