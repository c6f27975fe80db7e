using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>
/// Both ends cut or touch and the middle folds, twice: no adjuster and no lap mends that. A straightedge along the knife; its screws slackened and tightened
/// from the middle outwards; feel again; if it stays, facing the knife, a new knife or the grinder. Common practice, no source.
/// </summary>
internal static class HollowMiddle
{
    private const int Twice = 2;

    /// <summary>Probability that the middle stands off from the ends by more than a quarter of the tolerance.</summary>
    public static double Probability(SteelBelief belief)
    {
        var (low, high) = belief.Track.Unit.BandUm;
        return 1 - belief.BowUm.Below((high - low) / 4);
    }

    /// <summary>Whether the signs were seen often enough to name it.</summary>
    public static bool Named(NipSigns signs) => signs.HollowSeen >= Twice || (signs.KnifeScrewsDone && signs.HollowSeen > 0);

    /// <summary>In a sentence.</summary>
    public static string Say(SteelBelief belief) =>
        $"The middle looks hollow ({StepSpeech.InHundred(Probability(belief))} that it stands off by more than a quarter of the tolerance; about {StepSpeech.Um(belief.BowUm.Mean)}): both ends cut or touch, and the middle folds.";

    /// <summary>The step where it was seen often enough.</summary>
    public static AdviceStep? Step(BenchCase c) => Step(c, Named(c.Signs));

    /// <summary>The step before a mowing where it was seen once: it is not mown with a middle that folds before somebody looked.</summary>
    public static AdviceStep? BeforeMowing(BenchCase c) => c.Sitting.Open && c.Signs.HollowSeen > 0 ? Step(c, named: true) : null;

    private static AdviceStep? Step(BenchCase c, bool named)
    {
        var s = c.Signs;
        if (s.HollowLast is null) return null;
        if (s.KnifeScrewsDone && s.HollowSeen == 0)
        {
            if (c.Memory.FeelWanted) return c.WasDeclined("contact") ? null : c.Ask("contact", BenchCase.Ends, "The screws of the {bedknife} were tightened anew: feel both ends again.");
            return s.StripFed || !c.OwnsStrip || c.WasDeclined("paper-cut") ? null : c.Ask("paper-cut", BenchCase.All, "Does the middle cut now that the screws of the {bedknife} were tightened anew?");
        }
        if (!named) return null;
        string[] why = [Say(c.Belief), "The {bedknife} is hollow, the {reel} is worn in the middle, or the {bedknife} was pulled by its screws: no adjuster and no lap mends that."];
        if (s.StraightedgeMm is null && !s.KnifeScrewsDone && !c.WasDeclined("straightedge"))
            return c.Step("straightedge", "Lay a straightedge along the {bedknife} and look for light under its middle; where there is any, try a feeler there. Tell the hollow in mm, 0 for none.", 3, why);
        if (!s.KnifeScrewsDone && !c.WasDeclined("knife-screws"))
        {
            return c.Step("knife-screws", "Slacken the screws of the {bedknife}, then tighten them from the middle outwards, a little at a time; then feel again.", 10, why) with
            {
                Then = [c.Ask("contact", BenchCase.Ends), .. c.OwnsStrip ? (AdviceStep[])[c.Ask("paper-cut", BenchCase.All)] : []],
            };
        }
        var reel = s.StraightedgeMm is < 0.01;
        var (name, what) = c.Track.Unit.Owns.Contains("grinder") ? ("grind", reel ? "reel" : "bedknife") : ("repair", (string?)null);
        if (c.WasDeclined(name)) return null;
        var say = (name, reel) switch
        {
            ("grind", false) => "Face the {bedknife} on its bar, or fit a new one: its middle stays hollow.",
            ("grind", true) => "Grind the {reel} true: the {bedknife} is straight, so it is the {reel} that is worn in the middle.",
            (_, false) => "Have the {bedknife} faced on its bar, or a new one fitted: its middle stays hollow.",
            _ => "Have the {reel} ground true: the {bedknife} is straight, so it is the {reel} that is worn in the middle.",
        };
        return c.Step(name, say, name == "grind" ? c.Settings.OwnGrindMinutes : c.Settings.SentGrindMinutes, why) with { What = what };
    }
}
