namespace Closemown.Pages;

/// <summary>Empty forms for every kind of entry.</summary>
public interface IBlankForms
{
    /// <summary>The kinds, each with what an entry of it says.</summary>
    IReadOnlyList<(string Kind, string Says)> Kinds { get; }

    /// <summary>An empty form; null where there is no such kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="unit">The cutting unit that is written in; null for none.</param>
    /// <param name="area">The area that is written in; null for none.</param>
    /// <param name="back">Where to go then.</param>
    FormToMend? Of(string kind, string? unit, string? area, string back);
}
