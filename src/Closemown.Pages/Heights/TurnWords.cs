namespace Closemown.Pages.Heights;

/// <summary>A turn of a height screw in few words, to stand beside its picture.</summary>
public static class TurnWords
{
    private const double Hair = 0.04;
    private const int Parts = 16;

    /// <summary>"Raise left by about 1/4 turn (0.23)".</summary>
    /// <param name="side">The side's word.</param>
    /// <param name="turns">Turns, + raises; not 0.</param>
    /// <param name="figures">The reader's numbers.</param>
    public static string Say(string side, double turns, Figures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return $"{(turns > 0 ? "Raise" : "Lower")} {side} by {Size(Math.Abs(turns))} ({figures.Number(Math.Abs(turns), 2)})";
    }

    /// <summary>"about 1/4 turn", "1 turn and 3/8", "a hair".</summary>
    /// <param name="turns">Turns, 0 or more.</param>
    public static string Size(double turns)
    {
        if (turns < Hair) return "a hair";
        var parts = (int)Math.Round(turns * Parts);
        var (whole, part) = (parts / Parts, parts % Parts);
        var near = Math.Abs(turns - ((double)parts / Parts)) > 0.005 ? "about " : "";
        var turn = whole == 0 ? "" : whole == 1 ? "1 turn" : $"{whole} turns";
        if (part == 0) return near + turn;
        var (above, below) = (part, Parts);
        while (above % 2 == 0) (above, below) = (above / 2, below / 2);
        return near + (whole == 0 ? $"{above}/{below} turn" : $"{turn} and {above}/{below}");
    }
}
