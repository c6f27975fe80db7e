namespace Closemown.Weather;

/// <summary>A row whose cells are asked for by the names in the header.</summary>
/// <param name="Header">The names.</param>
/// <param name="Cells">The row.</param>
/// <param name="Line">Its line in the file.</param>
internal readonly record struct NamedRow(string[] Header, string[] Cells, long Line)
{
    /// <summary>The cell under a name, without the blanks that quotes may hold; empty where there is none.</summary>
    public string this[string name] => Array.IndexOf(Header, name) is var i and >= 0 && i < Cells.Length ? Cells[i].Trim() : "";

    /// <summary>The rows after the header, which is the first.</summary>
    public static IEnumerable<NamedRow> Of(TextReader text, char delimiter)
    {
        string[]? header = null;
        foreach (var (cells, line) in Rows.Of(text, delimiter))
        {
            if (header is null) header = cells;
            else yield return new(header, cells, line);
        }
    }
}
