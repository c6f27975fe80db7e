using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Closemown.Weather;

/// <summary>Rows of a table of text, with their line numbers.</summary>
internal static class Rows
{
    private static readonly string[] Missing = ["", "--", "-", "NA", "N/A", "NAN", "NULL", "M", "-999", "-999.0", "-9999", "-9999.0"];

    /// <summary>The rows, as they come.</summary>
    public static IEnumerable<(string[] Cells, long Line)> Of(TextReader text, char delimiter)
    {
        using var parser = new CsvParser(text, new CsvConfiguration(CultureInfo.InvariantCulture) { Delimiter = delimiter.ToString(), BadDataFound = null, IgnoreBlankLines = false, TrimOptions = TrimOptions.Trim }, leaveOpen: true);
        while (parser.Read()) yield return (parser.Record ?? [], parser.RawRow);
    }

    /// <summary>Whether a cell says that nothing was read.</summary>
    public static bool IsMissing(string cell) => Missing.Contains(cell.Trim(), StringComparer.OrdinalIgnoreCase);

    /// <summary>A number with a decimal point, or a comma where that is how the file writes.</summary>
    public static double? Number(string cell, bool comma)
    {
        var text = comma ? cell.Replace(',', '.') : cell;
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x) ? x : null;
    }
}
