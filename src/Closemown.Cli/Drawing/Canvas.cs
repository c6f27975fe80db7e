using System.Text;

namespace Closemown.Cli;

/// <summary>Characters with tones on a grid.</summary>
internal sealed class Canvas(int rows, int columns)
{
    private readonly char[,] signs = Filled(rows, columns);
    private readonly Tone[,] tones = new Tone[rows, columns];

    public bool IsBlank(int row, int column) => signs[row, column] == ' ';

    public void Put(int row, int column, char sign, Tone tone = Tone.Plain)
    {
        if (row < 0 || row >= rows || column < 0 || column >= columns) return;
        (signs[row, column], tones[row, column]) = (sign, tone);
    }

    public void Write(int row, int column, string text, Tone tone = Tone.Plain)
    {
        for (var i = 0; i < text.Length; i++) Put(row, column + i, text[i], tone);
    }

    /// <summary>The rows as text, runs of one tone inked together, blanks at the end left out.</summary>
    public IEnumerable<string> Lines(Func<Tone, string, string> ink)
    {
        for (var r = 0; r < rows; r++)
        {
            var end = columns;
            while (end > 0 && signs[r, end - 1] == ' ') end--;
            var line = new StringBuilder();
            for (var c = 0; c < end;)
            {
                var from = c;
                while (c < end && tones[r, c] == tones[r, from]) c++;
                line.Append(ink(tones[r, from], new string([.. Enumerable.Range(from, c - from).Select(i => signs[r, i])])));
            }
            yield return line.ToString();
        }
    }

    private static char[,] Filled(int rows, int columns)
    {
        var grid = new char[rows, columns];
        for (var r = 0; r < rows; r++)
        {
            for (var c = 0; c < columns; c++) grid[r, c] = ' ';
        }
        return grid;
    }
}
