using System.Text;

namespace Closemown.Advice;

/// <summary>One thing that today names: a step at the bench, or something for an area.</summary>
/// <param name="Do">As in the contract: a step's word, or mow, water, wait.</param>
/// <param name="Urgency">How pressing it is.</param>
/// <param name="Say">It as a sentence.</param>
/// <param name="Because">Why it stands where it stands among today's things.</param>
public sealed record TodayTask(string Do, Urgency Urgency, string Say, string Because)
{
    /// <summary>The unit, for a step at the bench; with a mowing the unit that mows, where it is known.</summary>
    public string? Unit { get; init; }

    /// <summary>The area; null for a step at the bench.</summary>
    public string? Area { get; init; }

    /// <summary>The step at the bench, or what the bench says of the mowing.</summary>
    public StepAdvice? Bench { get; init; }

    /// <summary>The area's plan.</summary>
    public AreaPlan? Plan { get; init; }

    /// <summary>Water to give, mm.</summary>
    public double? WaterMm { get; init; }

    /// <summary>When to come back, for wait.</summary>
    public DateOnly? Until { get; init; }

    public double TakesMinutes { get; init; }

    public IReadOnlyList<string> Why { get; init; } = [];

    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Whose it is: the area, else the unit.</summary>
    public string Whose => Area ?? Unit ?? "";

    /// <summary>The urgency as a word of the contract: "out-of-tolerance".</summary>
    public string UrgencyWord
    {
        get
        {
            var word = new StringBuilder();
            foreach (var c in Urgency.ToString())
            {
                if (char.IsUpper(c) && word.Length > 0) word.Append('-');
                word.Append(char.ToLowerInvariant(c));
            }
            return word.ToString();
        }
    }
}
