using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>The usual cautions, where they belong: before the first step of that kind in a sitting. Common practice; the maker's manual, the label and local law come first.</summary>
public static class Cautions
{
    public const string Hands = "Before hands go near: spark lead off and earthed, or battery out, or unplugged; mower wedged so that it cannot roll. The maker's manual comes first.";
    public const string Brake = "Free the {reel}'s brake or drive before turning it by hand or backwards. Turn it with a stick of wood or the drive, never by a blade; both hands out before you touch the phone.";
    public const string Paper = "Whoever holds the paper turns the {reel}; nobody else touches it. Cut-resistant gloves while it is still, no loose gloves, sleeves or cord while it turns.";
    public const string Turn = "At most two steps a side, side by side in turn; lock nut; one full turn backwards by hand, nothing heavy; three seconds under power off the green. Never from a turn of the adjuster straight to mowing; never spin a touching {reel} dry.";
    public const string Lap = "Goggles, long-handled brush, roller drive disconnected, an engine only outdoors. Two minutes, stop, check, wash at low pressure; three rounds at most. The {reel} turns backwards by its drive, hands away.";
    public const string Tip = "Tipping an engine mower: fuel off, never carburettor or air filter down. No air line on old clutch or brake dust.";
    public const string Strike = "After a hit: stop, isolate, look; file any burr flush before a turn under power.";
    public const string Green = "Back to the green: compound washed off, nuts tight, first strip on the surround, look, then the green. Stand on it first: frost, frozen soil, wet, footprints that stay or sand showing beat any plan.";

    /// <summary>The cautions of a step, those already shown in this sitting left out.</summary>
    public static IReadOnlyList<string> For(string step, BenchMemory memory, SittingNow sitting)
    {
        ArgumentNullException.ThrowIfNull(memory);
        ArgumentNullException.ThrowIfNull(sitting);
        var cautions = new List<string>();
        bool First(params ReadOnlySpan<string> kinds) => !sitting.Has(kinds);
        if (step == "mow")
        {
            if (!First("clicks", "lap", "square-up", "stone", "grind", "rebuild")) cautions.Add(Green);
            return cautions;
        }
        // Nobody knows which advice was read: it is shown until something was done, so that it also stands before the first step after readings.
        if (step is not ("wait" or "strip") && First("clicks", "square-up", "lap", "stone", "grind", "rebuild", "screw", "locked", "service"))
        {
            cautions.Add(Hands);
            if (sitting.Entries.Count == 0) cautions.Add(Tip);
        }
        if (memory.Upset is { } u && u.Is(StrikeEntry.Kind) && First("fit", "contact", "paper-cut")) cautions.Add(Strike);
        if (step is "contact" or "clicks" or "square-up" or "lap" && First("contact", "clicks", "square-up", "lap")) cautions.Add(Brake);
        if (step is "paper-cut" or "paper-drag" or "square-up" && First("paper-cut", "paper-drag", "square-up")) cautions.Add(Paper);
        if (step is "clicks" or "square-up" && First("clicks", "square-up")) cautions.Add(Turn);
        if (step == "lap" && First("lap")) cautions.Add(Lap);
        return cautions;
    }
}
