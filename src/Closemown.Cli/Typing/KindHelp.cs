using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Help for one kind of entry.</summary>
internal static class KindHelp
{
    public static IEnumerable<string> Lines(KindSpec kind, int width)
    {
        yield return $"{kind.Name}: {kind.Help}.";
        yield return "";
        yield return "Example";
        yield return $"  closemown add {ShortForms.Examples.GetValueOrDefault(kind.Name, kind.Name)}";
        if (kind.Fields.Count > 0)
        {
            yield return "";
            yield return "Fields (words and numbers in this order, or field=value)";
        }
        foreach (var f in kind.Fields)
        {
            var words = f.Words.Count > 0 ? ": " + string.Join(" / ", f.Words) : f.Form == FieldForm.Flag ? ": yes / no" : "";
            foreach (var line in Wrap.Beside("  " + f.Name, f.Help + words + (f.Required ? " (must be there)" : ""), width, 20)) yield return line;
        }
    }
}
