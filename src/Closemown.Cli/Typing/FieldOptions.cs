using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>A field given as an option: <c>--how ruler</c> or <c>--how=ruler</c> is <c>how=ruler</c>.</summary>
internal static class FieldOptions
{
    /// <summary>The words typed, options for fields written as assignments.</summary>
    /// <exception cref="CliFault">An option that is no field, or one without its value.</exception>
    public static List<string> Assigned(KindSpec kind, IReadOnlyList<string> typed)
    {
        var words = new List<string>();
        for (var i = 0; i < typed.Count; i++)
        {
            if (!typed[i].StartsWith("--", StringComparison.Ordinal))
            {
                words.Add(typed[i]);
                continue;
            }
            var (name, value) = typed[i][2..].Split('=', 2) is [var n, var v] ? (n, v) : (typed[i][2..], null);
            var field = FieldNames.Find(kind, name);
            if (field is null)
            {
                throw CliFault.Usage($"add knows no option \"{typed[i]}\", and {kind.Name} has no such field.", Spelling.Nearest(name, kind.Fields.Select(f => f.Name)) is { } near ? $"Did you mean --{near}?"
                    : $"closemown add {kind.Name} --help lists its fields, closemown add --help the options.");
            }
            if (value is null && field.Form == FieldForm.Flag && (i + 1 == typed.Count || typed[i + 1] is not ("yes" or "no" or "true" or "false"))) value = "yes";
            if (value is null)
            {
                if (i + 1 == typed.Count) throw CliFault.Usage($"--{name} needs a value.", $"{field.Help}: write --{name} VALUE.");
                value = typed[++i];
            }
            words.Add($"{field.Name}={value}");
        }
        return words;
    }
}
