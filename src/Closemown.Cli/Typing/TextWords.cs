using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Kinds that are mostly a text, whose words belong together without quotes: "treat growth regulator green label as printed".</summary>
internal static class TextWords
{
    /// <summary>Sets the text, and what stands before and after it.</summary>
    /// <returns>Whether the kind is such a one; else nothing was done.</returns>
    public static bool Place(TypedEntry entry, IReadOnlyList<string> words)
    {
        var kind = entry.Kind;
        if (kind.Name is not (RebuildEntry.Name or TreatEntry.Name) || words.Count == 0) return false;
        var text = words.ToList();
        if (kind.IndexOf("label") >= 0 && text.FindIndex(w => w.Equals("label", StringComparison.OrdinalIgnoreCase)) is var label and >= 0 && label + 1 < text.Count)
        {
            entry.Set(kind.Fields[kind.IndexOf("label")], string.Join(' ', text.Skip(label + 1)));
            text.RemoveRange(label, text.Count - label);
        }
        foreach (var flag in kind.Fields.Where(f => f.Form == FieldForm.Flag))
        {
            if (text.RemoveAll(w => w.Replace("-", "", StringComparison.Ordinal).Equals(flag.Name, StringComparison.OrdinalIgnoreCase)) > 0) entry.Set(flag, "yes");
        }
        // The place stands at the start or at the end; a name within the text is part of it.
        if (text.Count > 1)
        {
            var n = PlaceWords.Take(entry, text, 0);
            text.RemoveRange(0, n);
            for (var back = Math.Min(3, text.Count - 1); back > 0 && n == 0; back--)
            {
                var known = kind.Belongs == Belongs.Unit ? entry.Names.Units : entry.Names.Areas;
                if (BookNames.At(known, text, text.Count - back) is not var (_, m) || m != back) continue;
                n = PlaceWords.Take(entry, text, text.Count - back);
                text.RemoveRange(text.Count - n, n);
            }
            if (n > 0 && text.Count > 1 && text[^1] is "on" or "at") text.RemoveAt(text.Count - 1);
        }
        if (text.Count > 0 && !entry.Has("what")) entry.Set(kind.Fields[kind.IndexOf("what")], string.Join(' ', text));
        return true;
    }
}
