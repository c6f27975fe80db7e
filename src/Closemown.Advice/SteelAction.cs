using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Something that can be done to the steel before mowing, as a whole plan: clicks, and a lap after them.</summary>
/// <param name="Do">The first word of the plan: leave, clicks, close-in, lap, square-up, stone, grind, repair.</param>
/// <param name="Left">Steps of the left adjuster in all, + in.</param>
/// <param name="Right">Steps of the right adjuster in all, + in.</param>
/// <param name="LapMinutes">Minutes of lapping after the clicks; 0 for none.</param>
public sealed record SteelAction(string Do, int Left = 0, int Right = 0, double LapMinutes = 0)
{
    public static SteelAction Leave { get; } = new("leave");

    /// <summary>In step by step, feeling after each go, until an end touches: how many goes that takes only the doing shows.</summary>
    public static SteelAction CloseIn { get; } = new("close-in");

    /// <summary>Whether any adjuster comes in.</summary>
    public bool ComesIn => Left > 0 || Right > 0;

    /// <summary>Rounds of lapping: none is longer than two minutes.</summary>
    public int LapRounds => (int)Math.Ceiling(LapMinutes / AdviceSettings.LapRoundMinutes);

    /// <summary>Minutes of the person's time at the bench, the feeling of both ends after a change included.</summary>
    /// <param name="s">What things take.</param>
    /// <param name="lapsBefore">Rounds lapped in this sitting already: the compound is out.</param>
    public double Minutes(AdviceSettings s, int lapsBefore = 0)
    {
        ArgumentNullException.ThrowIfNull(s);
        var feel = 2 * s.ContactMinutes;
        var goes = Math.Max(1, (Math.Max(Math.Abs(Left), Math.Abs(Right)) + AdviceSettings.MostClicks - 1) / AdviceSettings.MostClicks);
        var clicks = Left == 0 && Right == 0 ? 0 : (goes * s.ClicksMinutes) + ((goes - 1) * feel) + ((Math.Abs(Left) + Math.Abs(Right)) * s.ClickMinutes);
        return Do switch
        {
            "leave" or "close-in" => 0,              // close-in: by the goes it takes, ActionEffect
            "square-up" => s.SquareUpMinutes + clicks + feel,
            "stone" => s.StoneMinutes + feel,
            "grind" => s.OwnGrindMinutes,
            "repair" => s.SentGrindMinutes,
            _ => clicks + feel + (LapMinutes > 0 ? (lapsBefore > 0 ? s.LapAgainMinutes : s.LapSetUpMinutes) + LapMinutes + ((LapRounds - 1) * s.LapAgainMinutes) : 0),
        };
    }

    /// <summary>What it costs beside the person's time, in minutes: money, and a mower that is away.</summary>
    public double Worth(AdviceSettings s)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Do == "repair" ? s.SentGrindWorth : 0;
    }

    /// <summary>In words, for people: "1 in left, 1 in right, then lap 2 minutes".</summary>
    public string Say(UnitDescription unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var turns = Left == 0 && Right == 0 ? "" : $"{Side("left", Left)}, {Side("right", Right)}";
        return Do switch
        {
            "leave" => "leave it and mow",
            "close-in" => "come in step by step, feeling each time, until an end touches",
            "square-up" => $"same drag at both ends, then {turns}",
            "stone" => "file the front of the bedknife",
            "grind" => "grind",
            "repair" => "send it to be ground",
            _ => LapMinutes > 0 ? (turns.Length > 0 ? turns + ", then " : "") + $"lap {Phrasing.Number(LapMinutes, "0.#")} min" : turns,
        };
        static string Side(string side, int n) => n == 0 ? $"{side} stays" : $"{side} {Math.Abs(n)} {(n > 0 ? "in" : "out")}";
    }
}
