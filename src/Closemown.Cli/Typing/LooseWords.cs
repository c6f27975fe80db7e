using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Words and numbers without a field's name, in any order: each goes to the next field that can take it.</summary>
internal sealed class LooseWords(TypedEntry entry)
{
    /// <summary>Words that say nothing of a field.</summary>
    private static readonly string[] Fillers = ["on", "the", "at", "of", "from", "for", "with", "and", "to", "a", "an", "per", "in", "mowing", "over", "it", "is", "tips", "colour", "color", "high", "tall", "&", "nitrogen", "n", "came", "off"];

    private readonly KindSpec kind = entry.Kind;
    private int next;

    /// <summary>The words that a kind knows, for hints.</summary>
    public static IEnumerable<string> Known(KindSpec kind) =>
        kind.Fields.SelectMany(f => f.Words).Concat(kind.Fields.Where(f => f.Form == FieldForm.Flag).Select(f => f.Name)).Concat(FieldNames.Said(kind)).Distinct();

    public void Place(IReadOnlyList<string> words)
    {
        if ((kind.Name is ClicksEntry.Name or ScrewEntry.Name || (kind.Name == GaugeEntry.Name && entry.Today is not null)) && words.Count == 1 && entry.Count == 0 && Amounts.IsNumber(words[0]))
            throw Side(words[0]);
        if (TextWords.Place(entry, words)) return;
        for (var at = 0; at < words.Count;) at += Take(words, at);
    }

    private CliFault Side(string word) =>
        CliFault.Refused($"\"{word}\" does not say which side.", $"Write both, left then right: closemown add {kind.Name} {word} {word}; or one: closemown add {kind.Name} left={word}.");

    private int Take(IReadOnlyList<string> words, int at)
    {
        var word = words[at];
        if (word == "-")
        {
            next++;
            return 1;
        }
        if (FitWords.Take(entry, words, at) is > 0 and var fit) return fit;
        if (WishWords.Take(entry, words, at) is > 0 and var wish) return wish;
        if (ElementWords.Take(entry, words, at) is > 0 and var element) return element;
        if (Sayings.Take(entry, words, at) is > 0 and var said) return said;
        if (NamedWords.Take(entry, words, at) is > 0 and var named) return named;
        if (Field(word) is { } field)
        {
            entry.Set(field, field.Form == FieldForm.Flag ? "yes" : word);
            next = kind.IndexOf(field.Name) + 1;
            return 1;
        }
        if (PlaceWords.Take(entry, words, at) is > 0 and var place) return place;
        if (kind.Belongs is Belongs.Area or Belongs.UnitAndArea && (Fillers.Contains(word, StringComparer.OrdinalIgnoreCase) || (word is "day" or "days" && kind.Name == WishEntry.Name))) return 1;
        throw NoPlace.Of(entry, words, at);
    }

    private FieldSpec? Field(string token)
    {
        var ahead = kind.Fields.Skip(next).Concat(kind.Fields.Take(next)).Where(f => !entry.Has(f.Name)).ToList();
        if (ahead.FirstOrDefault(f => f.Form is FieldForm.Word or FieldForm.Words && FieldText.Word(f, token) is not null) is { } word) return word;
        if (ahead.FirstOrDefault(f => f.Form == FieldForm.Flag && f.Name.Equals(token, StringComparison.OrdinalIgnoreCase)) is { } flag) return flag;
        if (token.Any(char.IsDigit) || Halves(token))
        {
            if (kind.Name == StripEntry.Name && token.All(c => char.IsDigit(c) || c is '.' or ','))
                throw CliFault.Refused($"\"{token}\" may be µm or g/m².", $"Write {token}gsm for what the packet says, or {token}um for what was measured.");
            if (ahead.FirstOrDefault(f => Takes(f, token)) is { } number) return number;
        }
        return ahead.FirstOrDefault(f => f.Form is FieldForm.Text or FieldForm.Texts && f.Required);
    }

    /// <summary>Whether a number without a name may go to a field. Of the weather only the two temperatures may; the rest must be named or carry its unit.</summary>
    private bool Takes(FieldSpec f, string token) =>
        f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers or FieldForm.Numbers
        && !(f.Name is "um" or "sdUm" && entry.Has("layers"))
        && NumberText.TryRead(f, token.Split(',', ';')[0], entry.Style, out _, out _)
        && (kind.Name != WeatherEntry.Name || f.Name is "tMinC" or "tMaxC" || !Amounts.IsBare(token));

    /// <summary>Whether the text is a number written in words.</summary>
    private static bool Halves(string token) => token.Contains('½', StringComparison.Ordinal) || token.Contains('¼', StringComparison.Ordinal)
        || token.Split(' ') is [var first, _, ..] && first.ToLowerInvariant() is "half" or "one" or "two" or "three" or "four";
}
