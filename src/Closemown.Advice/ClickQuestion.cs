using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>The one question about the size of a step of the adjuster, where nobody told it: before the first turn that is advised, and no more after it.</summary>
internal static class ClickQuestion
{
    /// <summary>The question; null where the step turns no adjuster, the size was told, or a turn is in the book already.</summary>
    public static string? Of(UnitTrack track, AdviceStep step)
    {
        var turns = step.Do is "clicks" or "square-up";
        if (!turns || track.Memory.EverTurned || track.Unit.ToldClickUm is not null || track.Unit.Priors.ContainsKey("clickUm")) return null;
        return "How many {step}s is one turn of an adjuster, and which thread has it? Count them over one whole turn, and measure ten threads with a ruler. It can wait.";
    }
}
