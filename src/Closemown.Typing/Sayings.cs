namespace Closemown.Typing;

/// <summary>What people say for a field and its value in one: "twice" for passes=2, "brown" for the colour of straw.</summary>
public static class Sayings
{
    private static readonly (string What, string[] Said)[] Works =
    [
        ("topdress", ["topdress", "topdressed", "topdressing", "top-dress", "top-dressed", "top-dressing", "top dress", "top dressed", "top dressing", "dressed", "dressing", "sand", "sanded"]),
        ("brush", ["brush", "brushed", "brushing"]),
        ("roll", ["roll", "rolled", "rolling"]),
        ("groom", ["groom", "groomed", "grooming"]),
        ("verticut", ["verticut", "verticutting", "scarify", "scarified", "scarifying"]),
        ("aerate", ["aerate", "aerated", "aerating", "aeration", "spiked", "spike", "spiking", "cored", "hollow-tine", "hollow-tined", "hollow tined"]),
        ("overseed", ["overseed", "overseeded", "overseeding", "over-seed", "seeded", "seed"]),
    ];

    private static readonly (string Kind, string Field, string Value, string[] Said)[] Table =
    [
        .. Works.Select(w => ("work", "what", w.What, w.Said)),
        ("mow", "passes", "1", ["once", "single"]),
        ("mow", "passes", "2", ["twice", "double", "two ways", "both ways", "2x", "x2"]),
        ("mow", "passes", "3", ["three times", "3x", "x3"]),
        ("look", "colour", "blue-grey", ["blue grey", "blue gray", "blue-gray", "bluegrey", "bluegray"]),
        ("look", "colour", "straw", ["brown", "bleached"]),
        ("look", "colour", "yellow", ["yellowish", "yellowing"]),
        ("look", "colour", "patches", ["patchy", "patch", "spots", "spotty"]),
        ("look", "tips", "ragged", ["torn", "frayed", "torn tips", "frayed tips", "ragged tips"]),
        ("look", "tips", "white", ["dead", "dead tips", "brown tips", "white tips", "bleached tips", "tips dead", "tips brown"]),
        ("look", "frost", "yes", ["frosty", "frosted", "white frost"]),
        ("look", "frozenSoil", "yes", ["frozen", "frozen soil", "soil frozen"]),
        ("look", "wet", "yes", ["damp", "waterlogged", "dew", "dewy"]),
        ("look", "wet", "no", ["dry"]),
        ("look", "soft", "yes", ["spongy"]),
        ("look", "soft", "no", ["firm", "hard"]),
        ("look", "footprints", "yes", ["footprint", "footprints stay", "footprinting"]),
        ("canopy", "when", "after", ["just mown", "afterwards", "mown"]),
        ("canopy", "when", "before", ["unmown"]),
        ("grind", "reliefDone", "yes", ["relief", "with relief", "and relief"]),
        ("rebuild", "newKnife", "yes", ["new knife"]),
    ];

    /// <summary>The work that the word says; null for none.</summary>
    public static string? Work(string said) => Array.Find(Works, w => w.Said.Contains(said)).What;

    /// <summary>The value that a phrase says for a field whatever its kind; null for none.</summary>
    public static string? Value(string field, string said) => Array.Find(Table, r => r.Field == field && r.Said.Contains(said.ToLowerInvariant())).Value;

    /// <summary>Sets what the words from a place on say.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        var (kind, said) = (entry.Kind, words[at].ToLowerInvariant());
        // "no frost", "not wet"
        if (said is "no" or "not" && at + 1 < words.Count && kind.Fields.FirstOrDefault(f => f.Form == Entries.FieldForm.Flag && f.Name.Equals(words[at + 1], StringComparison.OrdinalIgnoreCase)) is { } flag)
        {
            entry.Set(flag, "no");
            return 2;
        }
        for (var n = Math.Min(3, words.Count - at); n > 0; n--)
        {
            var phrase = string.Join(' ', words.Skip(at).Take(n)).ToLowerInvariant();
            var row = Array.Find(Table, r => r.Kind == kind.Name && r.Said.Contains(phrase));
            if (row.Kind is null) continue;
            // "topdress … sand": said twice in other words.
            if (!entry.Has(row.Field)) entry.Set(kind.Fields[kind.IndexOf(row.Field)], row.Value);
            else if (!entry.Holds(row.Field, row.Value)) throw new TypedFault($"\"{phrase}\" says another {row.Field} than was said before.", "Say one of them; enter the other by itself.");
            return n;
        }
        return 0;
    }
}
