using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Words and numbers without a field's name: each goes to the next field that can take it.</summary>
internal sealed class LooseWords(TypedEntry entry)
{
    private readonly KindSpec kind = entry.Kind;
    private int next;

    public void Place(IReadOnlyList<string> tokens)
    {
        if (kind.Name == "clicks" && tokens.Count == 1 && entry.Count == 0)
            throw CliFault.Refused($"\"{tokens[0]}\" does not say which side.", "Write both, left then right: closemown add clicks 1 1; or one: closemown add clicks left=1.");
        foreach (var token in Joined(tokens))
        {
            if (token == "-") next++;
            else if (Field(token) is { } field) Put(field, token);
            else throw NoPlace(token);
        }
    }

    /// <summary>Where a text is wanted, words typed without quotes belong together.</summary>
    private IReadOnlyList<string> Joined(IReadOnlyList<string> tokens) => kind.Name is "rebuild" or "treat" && tokens.Count > 1 ? [string.Join(' ', tokens)] : tokens;

    private void Put(FieldSpec field, string token)
    {
        entry.Set(field, field.Form == FieldForm.Flag ? "yes" : token);
        next = kind.IndexOf(field.Name) + 1;
    }

    private FieldSpec? Field(string token)
    {
        var ahead = kind.Fields.Skip(next).Concat(kind.Fields.Take(next)).Where(f => !entry.Has(f.Name)).ToList();
        if (ahead.FirstOrDefault(f => f.Form is FieldForm.Word or FieldForm.Words && FieldText.Word(f, token) is not null) is { } word) return word;
        if (ahead.FirstOrDefault(f => f.Form == FieldForm.Flag && f.Name.Equals(token, StringComparison.OrdinalIgnoreCase)) is { } flag) return flag;
        if (token.Any(char.IsDigit) || Halves(token))
        {
            if (kind.Name == "strip" && token.All(c => char.IsDigit(c) || c is '.' or ','))
                throw CliFault.Refused($"\"{token}\" may be µm or g/m².", $"Write {token}gsm for what the packet says, or {token}um for what was measured.");
            if (ahead.FirstOrDefault(f => f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers or FieldForm.Numbers && NumberText.TryRead(f, token.Split(',', ';')[0], entry.Style, out _, out _)) is { } number)
                return number;
        }
        return ahead.FirstOrDefault(f => f.Form is FieldForm.Text or FieldForm.Texts && (f.Required || kind.Name is "rebuild" or "treat"));
    }

    /// <summary>Whether the text is a number written in words.</summary>
    private static bool Halves(string token) => token.StartsWith("half", StringComparison.OrdinalIgnoreCase) || token.Contains('½', StringComparison.Ordinal) || token.Contains('¼', StringComparison.Ordinal);

    private CliFault NoPlace(string token)
    {
        var number = kind.Fields.FirstOrDefault(f => f.Form is FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps or FieldForm.NumberOrNumbers && !entry.Has(f.Name));
        if (number is not null && token.Any(char.IsDigit) && !NumberText.TryRead(number, token, entry.Style, out _, out var fault))
            return CliFault.Refused($"{number.Name}: {fault.Message}", $"{fault.Render()}\n{fault.Remedy}");
        var words = kind.Fields.SelectMany(f => f.Words).Concat(kind.Fields.Where(f => f.Form == FieldForm.Flag).Select(f => f.Name)).Distinct();
        var near = Spelling.Nearest(token, words);
        var example = ShortForms.Examples.TryGetValue(kind.Name, out var e) ? $"Write it like closemown add {e}" : "Write field=value";
        return CliFault.Refused($"{kind.Name} has no place for \"{Spelling.Clip(token)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"{example}; closemown add {kind.Name} --help lists its fields.");
    }
}
