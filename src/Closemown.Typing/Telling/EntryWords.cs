using System.Globalization;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>An entry in a short line, for lists and answers.</summary>
public static class EntryWords
{
    /// <summary>"paper-cut: left cuts, centre cuts, right folds"; of the turf a line in plain words.</summary>
    public static string Short(Entry e, WritingStyle style)
    {
        if (TurfEcho.Of(e, style) is { } turf) return OneLine(turf);
        var parts = e.Kind.Fields.Select(f => Field(e, f, style)).Where(p => p is not null).Concat(e.Others.Select(o => $"{o.Key} {o.Value}"));
        var said = string.Join(", ", parts);
        return said.Length > 0 ? OneLine($"{KindWords.Done(e.Kind)}: {said}") : KindWords.Done(e.Kind);
    }

    /// <summary>A text of several lines would look like several entries.</summary>
    private static string OneLine(string text) => text.ReplaceLineEndings(" ");

    /// <summary>"3 May 2026, 10:30".</summary>
    public static string When(DateTimeOffset at) => at.ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>"3 May 2026".</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static string? Field(Entry e, FieldSpec f, WritingStyle style)
    {
        if (e[e.Kind.IndexOf(f.Name)] is not { } value) return null;
        var typed = e.Typed.GetValueOrDefault(f.Name);
        if (typed is not null && (value is not double kept || NumberText.Says(f, typed, kept, style))) return $"{Name(f, style)} {typed}";
        var corrected = typed is null ? "" : $" (typed {typed})";
        return value switch
        {
            double d => e.Is(ClicksEntry.Kind) ? $"{f.Name} {(d == 0 ? "stays" : $"{Number(d < 0 ? -d : d, "0.#", style)} {(d > 0 ? "in" : "out")}")}" : $"{Name(f, style)} {Number(d, "0.###", style)}{Unit(f)}{corrected}",
            string s => f.Name is "what" or "where" or "when" ? s : $"{Name(f, style)} {s}",
            bool b => b ? Name(f, style) : $"not {Name(f, style)}",
            string[] list => string.Join(" and ", list),
            double[] list => $"{Name(f, style)} {string.Join(" ", list.Select(x => Number(x, "0.###", style)))}{Unit(f)}",
            GoNoGo g => $"{f.Name} {(g.GoUm is { } go ? $"{Number(go, "0.#", style)} goes" : "")}{(g is { GoUm: not null, NoGoUm: not null } ? ", " : "")}{(g.NoGoUm is { } no ? $"{Number(no, "0.#", style)} does not" : "")} (µm)",
            _ => f.Name,
        };
    }

    private static string Number(double x, string format, WritingStyle style) => x.ToString(format, CultureInfo.InvariantCulture).Replace('.', style.DecimalSign);

    private static string Name(FieldSpec f, WritingStyle style) => f.Name switch
    {
        "um" => "thickness",
        "mm" => "height",
        "gsm" => "paper",
        "hours" or "minutes" => "for",
        Stations.Centre => Words.For(style, WordKey.Centre),
        _ => Spaced(FieldNames.Short(f.Name)),
    };

    /// <summary>"knifeScrews" as "knife screws".</summary>
    private static string Spaced(string name) => string.Concat(name.Select((c, i) => char.IsUpper(c) && i > 0 ? " " + char.ToLowerInvariant(c) : c.ToString()));

    private static string Unit(FieldSpec f) => NumberText.Measure(f) switch { "um" => " µm", "mm" => " mm", "h" => " h", "min" => " min", "m2" => " m²", "gsm" => " g/m²", "c" => " °C", "m" => " m", "m/s" => " m/s", "turns" => " turns", _ => "" };
}
