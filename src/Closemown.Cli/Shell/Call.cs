using System.CommandLine;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>One command as called: what was typed, and what the person has set.</summary>
internal sealed class Call
{
    private Preferences? preferences;
    private BookDamage? damaged;

    public Call(ParseResult parsed, Surroundings around)
    {
        (Parsed, Around) = (parsed, around);
        if (parsed.GetValue(CommonOptions.NoColour)) Screen.Colour = false;
    }

    public ParseResult Parsed { get; }

    public Surroundings Around { get; }

    public Screen Screen => Around.Screen;

    public bool Json => Parsed.GetValue(CommonOptions.Json);

    public Preferences Preferences => preferences ??= Preferences.Of(Parsed, Around.Variable);

    /// <summary>The settings were written: they are read again.</summary>
    public void PreferencesChanged() => preferences = null;

    public WritingStyle Style => Preferences.Style;

    /// <summary>The time a question is asked, or a thing was done: what was told, or the clock.</summary>
    public DateTimeOffset Now => Parsed.GetValue(CommonOptions.At) is { } told ? TimeTyped.Read(told, Around.Time) : Clock();

    public BookLocation Location => BookLocation.Resolve(Parsed.GetValue(CommonOptions.Book), Around.Variable, Preferences.Book, BookLocation.UsualFolder(Around.Variable, BookLocation.Platform));

    public AdviceSettings Worth => AdviceSettings.Default with { PriceOfMinute = Preferences.PriceOfMinute };

    /// <summary>Opens the book to be read; a book that is not there is not made.</summary>
    public OpenBook Read()
    {
        var where = Location;
        // A link that leads nowhere, and a log that was left alone, are told as what they are.
        if (where.Path != BookFile.InMemory && !File.Exists(BookFile.Real(where.Path)) && !Directory.Exists(where.Path) && !File.Exists(where.Path + "-wal"))
            throw CliFault.Refused($"There is no book at {where.Path} yet.", "Start one: closemown new --unit mower --blades 10\nOr see it at work first: closemown demo");
        return Told(new OpenBook(BookFile.Open(where.Path, new BookOptions { ReadOnly = true, SoundPart = SoundPart }), this));
    }

    /// <summary>Opens the book to be written, making it where there is none.</summary>
    public OpenBook Write() => Told(new(BookFile.Open(Location.Path, new BookOptions { SoundPart = SoundPart }), this));

    /// <summary>Whether a damaged book is to answer from what is sound in it.</summary>
    public bool SoundPart => Parsed.GetValue(CommonOptions.SoundPart);

    /// <summary>An answer for programs; that of a damaged book says so.</summary>
    public void Answer(JsonObject answer)
    {
        if (damaged is not null && !answer.ContainsKey("damaged")) answer["damaged"] = Conversation.Damaged(damaged);
        Screen.Line(Conversation.Text(answer));
    }

    /// <summary>What rests on a part of the book only says so first; a program finds it in the answer.</summary>
    private OpenBook Told(OpenBook open)
    {
        if (damaged is not null || open.Book.Damage is not { } found) return open;
        damaged = found;
        if (Json) Screen.Error.Write($"closemown: {found.Warning}\n");
        else foreach (var line in Wrap.Text($"{found.Warning} {found.Remedy}", Screen.Width)) Screen.Line(Screen.Ink(Tone.Danger, line));
        return open;
    }

    /// <summary>The unit that is meant.</summary>
    public string UnitOf(Conversation talk)
    {
        var named = Parsed.GetValue(CommonOptions.Unit);
        var units = talk.Desk.Units;
        if (named is null)
        {
            return talk.OnlyUnit() ?? throw CliFault.Refused($"The book has several units: {string.Join(", ", units)}.", "Say which with --unit NAME.");
        }
        if (units.Count == 0 || units.Contains(named)) return named;
        var near = Spelling.Nearest(named, units);
        throw CliFault.Refused($"The book has no unit \"{Spelling.Clip(named)}\".", near is null ? $"It has {string.Join(", ", units)}." : $"Did you mean \"{near}\"?");
    }

    /// <summary>A clock time of a day here.</summary>
    public DateTimeOffset On(DateOnly day, TimeOnly clock) => TimeTyped.Read($"{day:yyyy-MM-dd} {clock:HH:mm}", Around.Time);

    private DateTimeOffset Clock()
    {
        var now = Around.Time.GetLocalNow();
        return now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMillisecond));
    }
}
