using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>What is said of a word that fits no field: why, the nearest that does, and how the entry is written.</summary>
internal static class NoPlace
{
    /// <summary>The fault of the word at a place.</summary>
    public static CliFault Of(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        var (kind, word) = (entry.Kind, words[at]);
        var numbers = kind.Fields.Where(f => f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers).ToList();
        // "3 parsecs": the word stands where a unit would.
        if (at > 0 && Amounts.IsBare(words[at - 1]) && char.IsLetter(word[0]) && numbers.Find(f => entry.Has(f.Name)) is { } before && Spelling.Nearest(word, entry.Names.Areas.Concat(LooseWords.Known(kind))) is null)
        {
            NumberText.TryRead(before, $"{words[at - 1]} {word}", entry.Style, out _, out var unit);
            if (unit is not null) return CliFault.Refused($"{before.Name}: {unit.Message}", $"{unit.Render()}\n{(Instead.TryGetValue(kind.Name, out var instead) ? instead : unit.Remedy)}");
        }
        if (word.Any(char.IsDigit) && numbers.Find(f => !entry.Has(f.Name)) is { } number && !NumberText.TryRead(number, word, entry.Style, out _, out var fault))
            return CliFault.Refused($"{number.Name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
        var near = Spelling.Nearest(word, LooseWords.Known(kind).Concat(Places(entry)));
        var example = ShortForms.Examples.TryGetValue(kind.Name, out var e) ? $"Write it like closemown add {e}" : "Write field=value";
        return CliFault.Refused($"{kind.Name} has no place for \"{Spelling.Clip(word)}\".", near is not null ? $"Did you mean \"{near}\"?"
            : $"{example}; closemown add {kind.Name} --help lists its fields.{Choices(entry)}{NewArea(kind, word)}");
    }

    /// <summary>What to do where people measure otherwise than the entry holds.</summary>
    private static readonly Dictionary<string, string> Instead = new()
    {
        ["water"] = "Write mm, as a straight-sided can on the turf shows, or l/m2: a litre on a square metre is 1 mm.",
        ["clippings"] = "Write litres; boxes differ, so fill yours once from a bucket: closemown add clippings 12 l.",
        ["feed"] = "Write the nitrogen in g/m2, kg/ha or lb/1000 sq ft: what was spread times its share of nitrogen, over the area.",
    };

    private static IEnumerable<string> Places(TypedEntry entry) => entry.Kind.Belongs switch
    {
        Belongs.Unit => entry.Names.Units,
        Belongs.Area => entry.Names.Areas,
        Belongs.UnitAndArea => entry.Names.Areas.Concat(entry.Names.Units),
        _ => [],
    };

    /// <summary>The words that are still free to be said.</summary>
    private static string Choices(TypedEntry entry) =>
        string.Concat(entry.Kind.Fields.Where(f => f.Form == FieldForm.Word && !entry.Has(f.Name) && Stations.IndexOf(f.Name) < 0).Take(3).Select(f => $"\n{f.Help}: {string.Join(", ", f.Words)}"));

    private static string NewArea(KindSpec kind, string word) =>
        PlaceWords.Plain.Contains(kind.Name) && char.IsLetter(word[0]) ? $"\nIf {Spelling.Clip(word)} is an area the book does not know yet: --area {Spelling.Clip(word)}." : "";
}
