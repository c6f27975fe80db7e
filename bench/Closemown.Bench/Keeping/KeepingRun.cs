namespace Closemown.Bench.Keeping;

/// <summary>The commands that measure how a book is kept.</summary>
internal static class KeepingRun
{
    /// <summary>Runs the command that is named; null where it is none of these.</summary>
    public static int? Print(string[] args) => args switch
    {
        ["kills", ..] => KillsRun.Print(args[1..]),
        ["kills-child", ..] => KillsChild.Run(args[1], args[2..]),
        ["flips", .. var more] when more.Contains("--answers") => AnswersRun.Print(more),
        ["book-load", ..] => LoadRun.Print(args[1..]),
        ["book-model", ..] => ModelRun.Print(args[1..]),
        ["flips", ..] => FlipsRun.Print(args[1..]),
        ["badlines", ..] => BadLinesRun.Print(args[1..]),
        ["weather", ..] => WeatherRun.Print(args[1..]),
        _ => null,
    };
}
