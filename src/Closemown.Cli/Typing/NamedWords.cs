using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>A field said with its value, either way round: "cut 5mm", "thatch 8", "100 mm deep", "2 passes".</summary>
internal static class NamedWords
{
    /// <summary>Sets the field that the words at a place name.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        if (at + 1 >= words.Count) return 0;
        if (Amounts.IsNumber(words[at]) && Free(entry, words[at + 1]) is { } after && Reads(entry, after, words[at]) && !NamesNext(entry, after, words, at))
        {
            entry.Set(after, words[at]);
            return 2;
        }
        if (Free(entry, words[at]) is not { } field) return 0;
        // What the label says may have many words.
        if (field.Name == "label")
        {
            entry.Set(field, string.Join(' ', words.Skip(at + 1)));
            return words.Count - at;
        }
        // "cans 4 5 6 5": as many numbers as follow.
        if (field is { Form: FieldForm.Numbers, Count: 0 } && words.Skip(at + 1).TakeWhile(Amounts.IsNumber).ToList() is { Count: > 1 } list)
        {
            entry.Set(field, string.Join(entry.Style.DecimalSign == ',' ? ';' : ',', list));
            return 1 + list.Count;
        }
        if (field.Form == FieldForm.Flag || !Reads(entry, field, words[at + 1])) return 0;
        entry.Set(field, words[at + 1]);
        return 2;
    }

    /// <summary>Whether a name after a number belongs to the number after it: "20min cut 5mm"; but not where each of several values comes before its name: "2.4 up 2.9 down".</summary>
    private static bool NamesNext(TypedEntry entry, FieldSpec name, IReadOnlyList<string> words, int at)
    {
        bool Follows(int i) => i < words.Count && Amounts.IsNumber(words[i]);
        if (!Follows(at + 2) || !Reads(entry, name, words[at + 2])) return false;
        var i = at;
        while (i + 1 < words.Count && Amounts.IsNumber(words[i]) && Free(entry, words[i + 1]) is { } f && Reads(entry, f, words[i])) i += 2;
        return Follows(i);
    }

    private static FieldSpec? Free(TypedEntry entry, string word) => word.Any(char.IsLetter) && FieldNames.Find(entry.Kind, word) is { } f && !entry.Has(f.Name) ? f : null;

    private static bool Reads(TypedEntry entry, FieldSpec field, string text) => field.Form switch
    {
        FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps => NumberText.TryRead(field, text, entry.Style, out _, out _),
        FieldForm.Numbers or FieldForm.NumberOrNumbers => Amounts.IsNumber(text),
        FieldForm.Word => FieldText.Word(field, text) is not null,
        FieldForm.Words => field.Name == "weekdays" ? WeekdayWords.Days(text) is not null : FieldText.Word(field, text.Split(',', ';')[0]) is not null,
        FieldForm.Date or FieldForm.Dates => entry.Today is { } today && DayTyped.Read([text], 0, today, ahead: true, out _) > 0,
        FieldForm.GoNoGo => text.Contains("..", StringComparison.Ordinal),
        FieldForm.Text => true,
        _ => false,
    };
}
