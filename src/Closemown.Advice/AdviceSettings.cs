namespace Closemown.Advice;

/// <summary>What things are worth, in minutes of the person's time; and how long they take. All are choices of ours with these defaults.</summary>
public sealed record AdviceSettings
{
    public static AdviceSettings Default { get; } = new();

    /// <summary>The one dial a person sees: above 1 saves minutes, below 1 saves the cut.</summary>
    public double PriceOfMinute { get; init; } = 1;

    /// <summary>A wholly torn mowing.</summary>
    public double TornMowing { get; init; } = 42;

    /// <summary>A mowing out of tolerance.</summary>
    public double OutOfTolerance { get; init; } = 30;

    /// <summary>A µm pressed for an hour, up to <see cref="PressingKneeUm"/>.</summary>
    public double PressedUmHour { get; init; } = 0.4;

    /// <summary>A µm pressed for an hour, beyond.</summary>
    public double HardPressedUmHour { get; init; } = 4;

    public double PressingKneeUm { get; init; } = 8;

    /// <summary>A µm of the bedknife used up; docs/decisions/0010-what-steel-is-worth.md.</summary>
    public double KnifeUm { get; init; } = 1.1;

    /// <summary>A µm of the reel used up.</summary>
    public double ReelUm { get; init; } = 3.9;

    /// <summary>A µm of bow carried forward beyond half the band: about what lapping it away takes.</summary>
    public double BowUm { get; init; } = 9;

    /// <summary>Guard on the pressing side, µm.</summary>
    public double GuardUm { get; init; } = 2.2;

    /// <summary>Share of its minutes that a check has to earn now; the rest it earns at the next mowings.</summary>
    public double CheckShare { get; init; } = 0.15;

    /// <summary>Parts left out, to measure what each is worth; none in use.</summary>
    public Ablation Without { get; init; }

    /// <summary>What is learned besides the steel.</summary>
    public Steel.LearningOptions Learning => new(!Without.HasFlag(Ablation.Surprise), !Without.HasFlag(Ablation.Scatter));

    public double OpenSittingMinutes { get; init; } = 5;
    public double PaperCutMinutes { get; init; } = 0.5;
    public double DragMinutes { get; init; } = 1.5;
    public double ContactMinutes { get; init; } = 0.3;
    public double TorchMinutes { get; init; } = 0.3;
    public double FeelerMinutes { get; init; } = 1.0;
    public double FitMinutes { get; init; } = 2;
    public double ClicksMinutes { get; init; } = 0.5;
    public double ClickMinutes { get; init; } = 0.3;
    public double LapSetUpMinutes { get; init; } = 8;
    /// <summary>Washing and looking before a further round of lapping in the same sitting.</summary>
    public double LapAgainMinutes { get; init; } = 2;

    public double SquareUpMinutes { get; init; } = 6;
    public double StoneMinutes { get; init; } = 15;
    public double OwnGrindMinutes { get; init; } = 120;

    /// <summary>Taking it out, away and back, and setting it into its place again.</summary>
    public double SentGrindMinutes { get; init; } = 90;

    /// <summary>What sending it away costs beside that work: the bill and the mowings missed.</summary>
    public double SentGrindWorth { get; init; } = 510;


    /// <summary>Steel a grind takes off knife and reel, µm each.</summary>
    public double GrindUm { get; init; } = 80;

    /// <summary>Most steps of an adjuster in one go.</summary>
    public const int MostClicks = 2;

    /// <summary>Minutes of one round of lapping at most, and rounds at most without a better cut.</summary>
    public const double LapRoundMinutes = 2;

    public const int LapRounds = 3;

    /// <summary>Minutes a check of that kind takes at so many stations.</summary>
    public double CheckMinutes(string kind, int stations) => stations * kind switch
    {
        "paper-cut" => PaperCutMinutes,
        "paper-drag" => DragMinutes,
        "contact" => ContactMinutes,
        "torch" => TorchMinutes,
        "feeler" => FeelerMinutes,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a check"),
    };
}
