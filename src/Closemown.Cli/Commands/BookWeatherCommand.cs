using System.CommandLine;
using System.Globalization;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Weather;

namespace Closemown.Cli;

/// <summary>Reads a weather file into the book's weather.</summary>
internal sealed class BookWeatherCommand : CliCommand
{
    private const int Batch = 2000, Shown = 3;
    private static readonly Argument<string> Source = new("file") { HelpName = "FILE", Description = "a weather file as exported; gzip too; - for standard input", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<string> Named = new("--source") { Description = "a name for where it comes from; left out: by its layout", HelpName = "NAME" };
    private static readonly Option<string[]> Columns = new("--column") { Description = "which column is which, with its unit: tMinC=\"Min\":C", HelpName = "FIELD=COLUMN:UNIT", AllowMultipleArgumentsPerToken = false };
    private static readonly Option<string> Dates = new("--dates") { Description = "order of dates with slashes", HelpName = "dmy|mdy" };
    private static readonly Option<string> Units = new("--units") { Description = "units of a daily summary that does not say them", HelpName = "metric|standard|tenths" };
    private static readonly Option<bool> DayBefore = new("--day-before") { Description = "read in the morning: the greatest temperature, the rain and the rest are of the day before the date, the least temperature is of the date" };
    private static readonly Option<int?> Place = new("--place") { Description = "which place of a file of several, counted from 1", HelpName = "N" };
    private static readonly Option<bool> Forecast = new("--forecast") { Description = "the file is a forecast" };
    private static readonly Option<bool> Confirmed = new("--confirmed") { Description = "take values that are not plausible as they are" };
    private static readonly Option<bool> Preview = new("--preview") { Description = "write nothing; show what was recognised and the first three days" };

    public BookWeatherCommand() : base("weather", "read a weather file into the book, or fetch, show and check its weather")
    {
        Examples =
        [
            ("closemown book weather days.csv --area green --preview", "see first what is recognised"),
            ("closemown book weather days.csv --area green", "read it; twice is once"),
            ("closemown book weather station.csv --area green --column tMinC=\"Low\":F --column tMaxC=\"High\":F --column rainMm=\"Rain\":in", "any table, its columns named with their units"),
            ("closemown book weather get --area green", "fetch forecast and past days, once switched on"),
            ("closemown book weather show --area green", "the last days, merged from all sources"),
        ];
        Details = ["Recognised by what is in it: GHCN-Daily (one element or one day a row), global summary of the day, DWD daily, MIDAS Open daily, Open-Meteo CSV and JSON, and any table with a column of days and columns by name. docs/weather.md tells more."];
        Arguments.Add(Source);
        foreach (var option in (Option[])[CommonOptions.Area, Named, Columns, Dates, Units, Place, DayBefore, Forecast, Confirmed, Preview, CommonOptions.At]) Options.Add(option);
        Subcommands.Add(new WeatherGetCommand());
        Subcommands.Add(new WeatherShowCommand());
        Subcommands.Add(new WeatherGapsCommand());
    }

    public override int Do(Call call)
    {
        if (call.Parsed.GetValue(Source) is not { } path) throw CliFault.Usage("Which file?", "Write closemown book weather FILE --area NAME, or get, show, gaps.");
        if (path != "-" && !File.Exists(path)) throw CliFault.Refused($"There is no file {path}.", "Check the path.");
        var preview = call.Parsed.GetValue(Preview);
        try
        {
            using var file = path == "-" ? call.Around.Input() : File.OpenRead(path);
            var read = WeatherFile.Read(file, new() { Columns = ColumnsTold(call), Dates = OneOf(call, Dates, "dmy", "mdy", "ymd"), Units = OneOf(call, Units, "metric", "standard", "tenths"), Place = call.Parsed.GetValue(Place) });
            if (call.Parsed.GetValue(DayBefore) && read.Placed) throw CliFault.Refused($"{read.Layout}: this layout says itself which day a value is of.", "Leave --day-before out.");
            if (call.Parsed.GetValue(DayBefore)) read = read with { Days = read.Days.ReadInTheMorning() };
            using var open = preview && !File.Exists(call.Location.Path) ? new OpenBook(BookFile.Open(BookFile.InMemory), call) : preview ? call.Read() : call.Write();
            var area = WeatherAreas.Of(call, open.Talk.Desk);
            // What lies ahead nobody has recorded; a service's own today is a forecast too.
            var today = area.LocalDate(call.Now);
            DateOnly? forecastFrom = call.Parsed.GetValue(Forecast) ? DateOnly.MinValue : read.Source == "open-meteo" ? today : today.AddDays(1);
            var source = call.Parsed.GetValue(Named) ?? read.Source;
            var entries = read.Days.Entries(area.Name, source, forecastFrom, d => area.At(d, TimeSpan.FromHours(12), new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero)), call.Parsed.GetValue(Confirmed));
            var report = preview ? new WeatherReport(read, source, area.Name) { First = FirstOf(entries) } : new WeatherReport(read, source, area.Name) { Done = Stored(open.Book, entries, call.Now) };
            report.Tell(call);
            return report.Ok ? ExitCodes.Done : ExitCodes.Refused;
        }
        catch (WeatherException fault)
        {
            throw CliFault.Refused(fault.Message, fault.Remedy);
        }
    }

    /// <summary>Puts entries in, some thousands in one go.</summary>
    /// <returns>How many are new, and how many were there.</returns>
    internal static (int Added, int There) Stored(IEntryStore book, IEnumerable<Entry> entries, DateTimeOffset now)
    {
        int added = 0, there = 0;
        var known = WeatherKnown.Of(book.ReadWeather());
        foreach (var chunk in entries.Select(e => known.Corrected(e, now)).Chunk(Batch).Select(c => c.OfType<Entry>().ToArray()))
        {
            foreach (var result in book.AppendAll(chunk, allOrNone: false))
            {
                if (result == AppendResult.Added) added++;
                else there++;
            }
        }
        return (added, there + known.Same);
    }

    /// <summary>The first few; all are made, so that what is left out of the later ones is known as well.</summary>
    private static List<Entry> FirstOf(IEnumerable<Entry> entries)
    {
        var first = new List<Entry>();
        foreach (var e in entries)
        {
            if (first.Count < Shown) first.Add(e);
        }
        return first;
    }

    internal static string Count(int n, string what) => $"{n.ToString(CultureInfo.InvariantCulture)} {what}{(n == 1 ? "" : "s")}";

    private static Dictionary<string, string> ColumnsTold(Call call)
    {
        var columns = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var told in call.Parsed.GetValue(Columns) ?? [])
        {
            var equals = told.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || equals == told.Length - 1) throw CliFault.Usage($"--column {told} does not say which column is which.", "Write it like --column tMinC=\"Min\":C");
            columns[told[..equals].Trim()] = told[(equals + 1)..].Trim();
        }
        return columns;
    }

    private static string? OneOf(Call call, Option<string> option, params string[] may)
    {
        var told = call.Parsed.GetValue(option);
        if (told is null || may.Contains(told)) return told;
        throw CliFault.Usage($"{option.Name} cannot be \"{Spelling.Clip(told)}\".", $"Write one of {string.Join(", ", may)}.");
    }
}
