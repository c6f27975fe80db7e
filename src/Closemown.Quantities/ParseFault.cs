namespace Closemown.Quantities;

/// <summary>Why a typed text cannot be read: the spot, what is wrong with it and what to write instead.</summary>
/// <param name="Text">The text as typed.</param>
/// <param name="Start">Where the spot begins, in characters from 0; inside the text unless the text is empty.</param>
/// <param name="Length">How long the spot is; at least 1 unless the text is empty.</param>
/// <param name="Message">What is wrong, one sentence.</param>
/// <param name="Remedy">What to write instead, one sentence.</param>
public sealed record ParseFault(string Text, int Start, int Length, string Message, string Remedy)
{
    /// <summary>Two lines: the text, and carets under the spot. Control characters show as spaces so that the carets stay in
    /// place.</summary>
    public string Render()
    {
        string line = string.Create(Text.Length, Text, static (span, text) =>
        {
            for (int i = 0; i < span.Length; i++)
                span[i] = char.IsControl(text[i]) || text[i] is '\u2028' or '\u2029' ? ' ' : text[i];
        });
        return line + "\n" + new string(' ', Start) + new string('^', Math.Max(1, Length));
    }

    /// <summary>The message and the remedy in one line.</summary>
    public override string ToString() => Message + " " + Remedy;

    /// <summary>A fault whose spot is pulled inside the text.</summary>
    internal static ParseFault At(string text, int start, int length, string message, string remedy)
    {
        if (text.Length == 0)
            return new ParseFault(text, 0, 0, message, remedy);
        start = Math.Clamp(start, 0, text.Length - 1);
        length = Math.Clamp(length, 1, text.Length - start);
        return new ParseFault(text, start, length, message, remedy);
    }
}
