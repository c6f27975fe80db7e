using System.Text;
using Closemown.Pipe;

namespace Closemown.Cli;

/// <summary>Where a command writes, how wide that is, and whether it may use colour.</summary>
internal sealed class Screen(TextWriter output, TextWriter error)
{
    private const int PipeWidth = 80;
    private const int Widest = 100;

    /// <summary>What a person reads; see <see cref="ScreenWriter"/>.</summary>
    public TextWriter Out { get; } = new ScreenWriter(output);

    /// <summary>What went wrong, and what is said by the way.</summary>
    public TextWriter Error { get; } = new ScreenWriter(error);

    /// <summary>The same place as <see cref="Out"/>, for lines that another program or file takes as they are.</summary>
    public TextWriter Data { get; } = output;

    public bool OutIsTerminal { get; init; }

    public bool ErrorIsTerminal { get; init; }

    /// <summary>Whether a person can be asked: both the answers and the questions go to a terminal.</summary>
    public bool CanAsk { get; init; }

    public int Width { get; init; } = PipeWidth;

    public bool Colour { get; set; }

    public static Screen OfThisProcess(Func<string, string?> variable)
    {
        var terminal = !Console.IsOutputRedirected;
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new Screen(new StreamWriter(Console.OpenStandardOutput(), utf8, 4096), new StreamWriter(Console.OpenStandardError(), utf8, 256) { AutoFlush = true })
        {
            OutIsTerminal = terminal,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            CanAsk = terminal && !Console.IsInputRedirected,
            Width = terminal ? Math.Clamp(TerminalWidth(), 40, Widest) : PipeWidth,
            Colour = terminal && string.IsNullOrEmpty(variable("NO_COLOR")) && variable("TERM") is not "dumb",
        };
    }

    public void Line(string text = "") => Out.Write(text + "\n");

    /// <summary>Something said by the way: only where a person reads along, never among data.</summary>
    public void Note(string text)
    {
        if (!ErrorIsTerminal) return;
        Out.Flush();
        Error.Write(text + "\n");
    }

    /// <summary>Tells of a fault of the program, for whoever will mend it.</summary>
    public void Tell(Bug bug) => Error.Write($"closemown: {bug.LogLine}\n");

    /// <summary>Text in a tone, or plain where colour is not wanted.</summary>
    public string Ink(Tone tone, string text) => !Colour || tone == Tone.Plain || text.Length == 0 ? text : $"{ScreenWriter.ColourMark}{Code(tone)}m{text}{ScreenWriter.ColourMark}0m";

    private static string Code(Tone tone) => tone switch
    {
        Tone.Steel => "1;38;5;67",
        Tone.Turf => "38;5;65",
        Tone.Paper => "38;5;136",
        Tone.Danger => "38;5;160",
        _ => "1",
    };

    private static int TerminalWidth()
    {
        try
        {
            return Console.WindowWidth is > 0 and var w ? w : PipeWidth;
        }
        catch (IOException)
        {
            return PipeWidth;
        }
    }
}
