using Closemown.Height;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>One step of an advice, in the words of the contract.</summary>
public sealed record AdviceStep(string Do)
{
    /// <summary>Steps of the adjusters, + in; for <c>clicks</c>.</summary>
    public int? Left { get; init; }

    public int? Right { get; init; }

    /// <summary>Turns of the height screws, + raises; for <c>screw</c>.</summary>
    public double? LeftTurns { get; init; }

    public double? RightTurns { get; init; }

    /// <summary>Minutes of lapping, or of waiting; for <c>lap</c> and <c>wait</c>.</summary>
    public double? LapMinutes { get; init; }

    public double? Grit { get; init; }

    /// <summary>What to file or grind; for <c>stone</c> and <c>grind</c>.</summary>
    public string? What { get; init; }

    /// <summary>Stations (0–2); for checks.</summary>
    public IReadOnlyList<int> Stations { get; init; } = [];

    /// <summary>What the person is asked by the way, once; it holds up nothing. Null for nothing.</summary>
    public string? Asks { get; init; }

    /// <summary>The blade to be felt; null where the check is of no one blade.</summary>
    public string? Blade { get; init; }

    public double TakesMinutes { get; init; }

    /// <summary>The step as a sentence, with places for the person's own words.</summary>
    public string Say { get; init; } = "";

    public IReadOnlyList<string> Why { get; init; } = [];

    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Further steps of the same plan, in order.</summary>
    public IReadOnlyList<AdviceStep> Then { get; init; } = [];

    /// <summary>Probabilities of each word a check may show, by station.</summary>
    public IReadOnlyList<(int Station, IReadOnlyList<string> Words, double[] P)> ExpectRead { get; init; } = [];

    /// <summary>What the whole plan should lead to, told with its first step; null for a check.</summary>
    public ExpectedNip? Expect { get; init; }

    /// <summary>What this step alone should lead to; null where it is not the first of a plan.</summary>
    public ExpectedNip? ExpectStep { get; init; }

    /// <summary>In setting the height: what the step should lead to.</summary>
    public ExpectedHeight? ExpectHeight { get; init; }

    /// <summary>In setting the height: the probability that both sides are within tolerance as they stand.</summary>
    public double? Within { get; init; }

    /// <summary>For <c>mow</c>: usual mowings until the bench is due, where the record tells.</summary>
    public int? BenchInMowings { get; init; }

    public double? BenchInDays { get; init; }
}

/// <summary>The nip that a step should lead to.</summary>
/// <param name="ClearanceUm">Clearance at the three stations, µm.</param>
/// <param name="InTolerance">Probability that all three are in tolerance.</param>
/// <param name="CleanShare">Share of leaf cut clean at the next mowing.</param>
public sealed record ExpectedNip(IReadOnlyList<Estimate> ClearanceUm, double InTolerance, double CleanShare);

/// <summary>The bench heights that a step should lead to.</summary>
/// <param name="Left">Left, as the gauge reads it with the nuts tight, mm.</param>
/// <param name="Right">Right, mm.</param>
/// <param name="Within">Probability that both are within tolerance.</param>
public sealed record ExpectedHeight(HeightEstimate Left, HeightEstimate Right, double Within);

/// <summary>A rule that an advice rests on, with where it comes from.</summary>
public sealed record Rule(string Id, string Text, string Source);

/// <summary>Another thing that could have been done.</summary>
/// <param name="Step">What.</param>
/// <param name="Say">In words.</param>
/// <param name="ExpectedLoss">What it is expected to cost in all, minutes; null for a check.</param>
/// <param name="Saves">What a check is expected to save, minutes; null for an action.</param>
public sealed record Alternative(AdviceStep Step, string Say, double? ExpectedLoss, double? Saves);

/// <summary>A reading that would change the advice.</summary>
public sealed record WouldChange(string Reading, double Probability, string To);

/// <summary>One advice: the step, and all that stands behind it.</summary>
public sealed record StepAdvice(AdviceStep Step)
{
    public string Id { get; init; } = "";

    /// <summary>The figures behind the reasons, in sentences: only for who asks why.</summary>
    public IReadOnlyList<string> Figures { get; init; } = [];

    /// <summary>Entries it rests on most: the last readings and changes.</summary>
    public IReadOnlyList<Guid> Entries { get; init; } = [];

    public IReadOnlyList<Rule> Rules { get; init; } = [];

    public IReadOnlyList<Alternative> Alternatives { get; init; } = [];

    public IReadOnlyList<WouldChange> WouldChange { get; init; } = [];

    /// <summary>What the next mowing would be with, left as it is; null where a rule decided alone.</summary>
    public ExpectedNip? AsItStands { get; init; }

    /// <summary>Expected loss of the advice, minutes; null where a rule decided alone.</summary>
    public double? ExpectedLoss { get; init; }
}
