using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>A page as it is printed.</summary>
public static partial class Paper
{
    /// <summary>Prints on A4, margins of 10 mm where the page asks for no others, without grounds, as browsers do by themselves.</summary>
    /// <returns>The PDF.</returns>
    public static Task<byte[]> Print(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        return page.PdfAsync(new() { Format = "A4", Margin = new() { Top = "10mm", Right = "10mm", Bottom = "10mm", Left = "10mm" } });
    }

    /// <summary>How many sheets a PDF of Chromium's has: it writes each page's dictionary in the clear.</summary>
    /// <exception cref="FormatException">No page was found, or the pages found are not as many as the PDF says it has.</exception>
    public static int Sheets(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var pages = SheetDictionary().Count(text);
        var said = SheetCount().Matches(text).Select(m => int.Parse(m.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)).DefaultIfEmpty().Max();
        return pages > 0 && pages == said ? pages : throw new FormatException($"{pages} pages were found in a PDF that says it has {said}.");
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex SheetDictionary();

    [GeneratedRegex(@"/Count\s+(\d+)")]
    private static partial Regex SheetCount();
}
