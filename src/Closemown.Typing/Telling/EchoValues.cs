using System.Globalization;
using System.Text.RegularExpressions;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>The values of an entry as its person reads them: as typed with its unit, else in the person's units.</summary>
internal sealed partial class EchoValues(Entry e, WritingStyle style, IReadOnlyDictionary<string, (string Yes, string No)> flags)
{
    /// <summary>A field's value in words; null where the entry does not say it.</summary>
    public string? Of(string place)
    {
        if (place == "area") return e.Area;
        if (place == "others") return e.Others.Count == 0 ? null : string.Join(", ", e.Others.Select(o => $"{o.Key} {o.Value.Replace('.', style.DecimalSign)}")) + " mg/kg";
        if (e.Kind.IndexOf(place) is not (>= 0 and var at) || e[at] is not { } value) return null;
        return value switch
        {
            double d => Number(e.Kind.Fields[at], d),
            double[] list => $"{string.Join(style.DecimalSign == ',' ? "; " : ", ", list.Select(x => Plain(Inches ? x / 25.4 : x)))} {(Inches ? "in" : "mm")}",
            string[] { Length: > 0 } list when e.Kind.Fields[at].Form == FieldForm.Dates => And([.. list.Select(Date)]),
            string[] list => And(list),
            bool b => b ? flags[place].Yes : flags[place].No,
            string s when e.Kind.Fields[at].Form == FieldForm.Date => Date(s),
            string s => s,
            _ => null,
        };
    }

    private bool American => style.Turf == TurfUnits.American;

    private bool Inches => style.Height != HeightUnit.Mm;

    private string Number(FieldSpec f, double d)
    {
        var typed = e.Typed.GetValueOrDefault(f.Name);
        var measure = NumberText.Measure(f);
        // A rate is always said with its "a square metre", also where only "1 kg" was typed.
        var says = typed is not null && NumberText.Says(f, typed, d, style);
        if (says && typed!.Any(c => char.IsLetter(c) || c is '°' or '%' or '"') && !(measure is "g/m2" or "kg/m2" && !typed!.Contains('/', StringComparison.Ordinal))) return Spaced(typed!);
        var said = measure switch
        {
            "mm" when American && f.Name is "rainMm" || (American && e.Is(WaterEntry.Kind)) => TurfPrinting.Water(d, style),
            "mm" => Length.Print(Math.Round(d, 2), Inches ? LengthUnit.Inch : LengthUnit.Mm, style),
            "m" => American ? TurfPrinting.Distance(d, style) : $"{Plain(d)} m",
            "h" => Duration.PrintClock(Math.Clamp(d, 0, 1e6)),
            "min" => Duration.PrintClock(Math.Clamp(d / 60, 0, 1e6)),
            "s" => $"{Plain(d)} s",
            "m2" => American ? TurfPrinting.Ground(d, style) : $"{Plain(d)} m²",
            "l" => American ? TurfPrinting.Clippings(d, style) : $"{Plain(d)} l",
            "c" => American ? TurfPrinting.Warmth(d, style) : $"{Plain(d)} °C",
            "m/s" => American ? TurfPrinting.Wind(d, style) : $"{Plain(d)} m/s",
            "g/m2" => American ? TurfPrinting.Feed(d, style) : $"{Plain(d)} g/m²",
            "kg/m2" => American ? TurfPrinting.Dressing(d, style) : $"{Plain(d)} kg/m²",
            "%" => $"{Plain(d)} %",
            _ => Plain(d),
        };
        return typed is null || says ? said : $"{said} (typed {typed})";
    }

    private string Plain(double d) => d.ToString("0.###", CultureInfo.InvariantCulture).Replace('.', style.DecimalSign);

    private static string And(string[] list) => list.Length < 2 ? string.Concat(list) : $"{string.Join(", ", list.SkipLast(1))} and {list[^1]}";

    private static string Date(string iso) => DateOnly.TryParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? EntryWords.Day(day) : iso;

    /// <summary>"20min" as "20 min".</summary>
    private static string Spaced(string typed) => Close().Replace(typed, "$1 $2");

    [GeneratedRegex(@"^([+\-]?[\d.,/½¼¾]+)([\p{L}""°%][^\d]*[2²]?)$")]
    private static partial Regex Close();
}
