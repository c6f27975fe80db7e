using Microsoft.Extensions.Primitives;

namespace Closemown.Web;

/// <summary>What a form about one entry brought: the envelope, the fields of the kind, and what steers it.</summary>
internal sealed class EnteredForm
{
    /// <summary>What is no field of any kind.</summary>
    private static readonly string[] Own = ["form", "kind", "unit", "area", "id", "at", "by", "note", "voids", "back", "confirm", "instead"];
    private const string UnitMark = ".in";
    private readonly Dictionary<string, string[]> values = new(StringComparer.Ordinal);

    public EnteredForm(IEnumerable<KeyValuePair<string, StringValues>> form)
    {
        foreach (var (name, told) in form)
        {
            // Empty ones are absent.
            var said = told.Select(v => v?.Trim() ?? "").Where(v => v.Length > 0).ToArray();
            if (said.Length > 0) values[name] = said;
        }
    }

    /// <summary>The names of fields of the kind that something was typed in.</summary>
    public IEnumerable<string> Fields => values.Keys.Where(n => !Own.Contains(n) && !n.EndsWith(UnitMark, StringComparison.Ordinal));

    /// <summary>Everything, as it came.</summary>
    public IEnumerable<KeyValuePair<string, string[]>> All => values;

    /// <summary>What was typed under a name; the last of several.</summary>
    public string? this[string name] => values.TryGetValue(name, out var v) ? v[^1] : null;

    /// <summary>All that was typed under a name.</summary>
    public IReadOnlyList<string> Values(string name) => values.GetValueOrDefault(name) ?? [];

    /// <summary>The unit that the form says a bare number of a field is in: "in" for <c>leftMm.in</c> = in.</summary>
    public string? UnitOf(string field) => this[field + UnitMark];

    /// <summary>Whether a name is of the envelope, which a person may have typed.</summary>
    public static bool IsTyped(string name) => name is "by" or "note" || !(Own.Contains(name) || name.EndsWith(UnitMark, StringComparison.Ordinal));
}
