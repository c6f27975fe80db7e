using Closemown.Steel;


namespace Closemown.Advice;

/// <summary>All that the rules of the trade and the ranking look at when the next step of a unit is asked for.</summary>
internal sealed class BenchCase
{
    public static readonly int[] Ends = [0, 2];
    public static readonly int[] All = [0, 1, 2];

    public BenchCase(SteelBelief belief, AdviceSettings settings, NextQuestion question, IReadOnlyList<AdviceStep> declined)
    {
        (Belief, Question, Declined) = (belief, question, declined);
        Settings = settings with { PriceOfMinute = question.PriceOfMinute };
        Sitting = new SittingNow(Memory, question.Now);
        AtBench = question.AtBench || Sitting.Open;
        Grit = Track.LastGrit ?? (Track.Unit.Grits.Count > 0 ? Track.Unit.Grits.Max() : null);
    }

    public SteelBelief Belief { get; }

    public UnitTrack Track => Belief.Track;

    public BenchMemory Memory => Belief.Track.Memory;

    public NipSigns Signs => Memory.Signs;

    public AdviceSettings Settings { get; }

    public NextQuestion Question { get; }

    public SittingNow Sitting { get; }

    /// <summary>Steps that the person declined since the last mowing.</summary>
    public IReadOnlyList<AdviceStep> Declined { get; }

    /// <summary>Whether opening a sitting costs nothing any more.</summary>
    public bool AtBench { get; }

    public double? Grit { get; }

    public bool OwnsStrip => Track.Unit.Owns.Contains("strip");

    /// <summary>Whether a step of that name was declined.</summary>
    public bool WasDeclined(string step) => Declined.Any(d => d.Do == step);

    /// <summary>A check as a step.</summary>
    public AdviceStep Ask(string kind, int[] at, params IReadOnlyList<string> why) => CheckSteps.Of(Belief, Settings, kind, at, Sitting) with { Why = why };

    /// <summary>A step that is no check.</summary>
    public AdviceStep Step(string name, string say, double minutes, params IReadOnlyList<string> why) =>
        new(name) { Say = say, TakesMinutes = minutes, Why = why, Cautions = Cautions.For(name, Memory, Sitting) };
}
