namespace Closemown.Advice;

/// <summary>The rules an advice may rest on. Common practice unless a source is named.</summary>
public static class Rules
{
    private const string Practice = "common practice, no source";
    private const string Ours = "our own reckoning: docs/model.md";

    public static Rule Fit { get; } = new("fit-first", "Play in the bearings, loose knife screws, a slipping adjuster or a bent blade: no check means anything; repair first, never adjust round it.", Practice);

    public static Rule FitAsked { get; } = new("fit-asked", "With a unit that is new to the book, after a rebuild and after a hit, look at bearings, knife screws, adjusters and blades before any other check.", Practice);

    public static Rule Odd { get; } = new("read-again", "One odd reading makes the next step the same check again, not a turn of the screw.", Ours);

    public static Rule Feel { get; } = new("feel-after-change", "Never from a turn of the adjuster straight to mowing: one full turn backwards by hand first, nothing heavy.", Practice);

    public static Rule Touched { get; } = new("no-step-in-on-a-touch", "An end that touched at the last feeling gets no step in, unless a lap follows in the same plan.", Practice);

    public static Rule TwoSteps { get; } = new("two-steps", "At most two steps a side at a go, side by side in turn; then feel.", Practice);

    public static Rule Cone { get; } = new("no-cone", "The ends are turned against each other by more than one step only where drag, touch, a feeler or a learned opening has told them apart; chasing a fold with one adjuster makes a cone of the reel.", Practice);

    public static Rule LapEdge { get; } = new("lap-the-edge", "Lap where the edge, not the gap, is likely the fault; never where a blade presses hard; two minutes a round, three rounds at most.", Practice);

    public static Rule CheckFirst { get; } = new("check-first", "No screw is turned in a sitting before something was checked in it.", Practice);

    public static Rule Sound { get; } = new("odd-sound", "After an odd sound, feel both ends before the next mowing.", Practice);

    public static Rule Loss { get; } = new("least-loss", "The step with the least expected loss over everything the unit may be, in minutes: torn leaf, out of tolerance, pressing, steel, bluntness carried on, and the person's time.", Ours);

    public static Rule Worth { get; } = new("worth-of-a-check", "A check is asked for where the loss it is expected to save is more than its minutes are worth.", "value of information: Howard 1966, IEEE Trans. Syst. Sci. Cybern. 2:22 (from memory)");

    public static Rule Plan { get; } = new("plan-goes-on", "The step before was the first of a plan; this is its next.", Ours);

    public static Rule LapInVain { get; } = new("lapping-in-vain", "Three rounds of lapping without a better paper cut: more lapping will not help.", Practice);

    public static Rule SmallRepair { get; } = new("small-repairs", "Small faults have small repairs: loose screws are tightened and looked at again, a nick is filed flush, a stiff adjuster is freed; only what must be taken apart is a rebuild.", Practice);

    public static Rule Strike { get; } = new("hit-open", "After a hit: look along the blades and at the screws before anything else, whatever was done since.", Practice);

    public static Rule LookOver { get; } = new("look-over-once", "A mower that is new to the book is looked over once: bearings, screws, adjusters, blades.", Practice);

    public static Rule TwoPeople { get; } = new("two-people", "Two people read opposite things within minutes, nothing changed between: one strip, both hands, before anything is turned.", Practice);

    public static Rule HeavyOut { get; } = new("heavy-out", "A heavy touch is backed off at once, then felt; nothing is read first, nothing is powered.", Practice);

    public static Rule TightestBlade { get; } = new("tightest-blade", "A touch once a turn is a fact of the reel: feel blade by blade, find the tightest, and set the adjusters by it.", Practice);

    public static Rule HotWaits { get; } = new("hot-waits", "A reel just run, or one that stood in the sun, is larger: wait about half an hour and feel again before any adjuster is turned.", Practice);

    public static Rule Hollow { get; } = new("hollow-middle", "Both ends cut or touch and the middle folds, twice: the knife is hollow, the reel worn in the middle, or the knife was pulled by its screws. No adjuster and no lap mends that.", Practice);

    public static Rule NotFollowing { get; } = new("does-not-follow", "A side that makes less than half of what it was turned, twice, is a fault: lock nut, spring, housing, thread.", Practice);

    public static Rule ThickStrip { get; } = new("strip-too-thick", "A strip thicker than about 0.12 mm tells little where a leaf should be cut.", Practice);

    public static Rule InFromFar { get; } = new("in-from-far", "The strip folds everywhere and nothing touches: in on both sides, two at a time, until it cuts or one end is just felt.", Practice);

    public static Rule CutsMow { get; } = new("cuts-so-mow", "It cuts the strip at all three places and the mown strip behind it is clean: mow. A clear setting that cuts is not turned into one that touches.", Practice);

    public static Rule StripLast { get; } = new("strip-last", "After any turn or lap the strip comes last: at all three places, before it mows.", Practice);

    public static IReadOnlyList<Rule> All { get; } = [SmallRepair, Strike, LookOver, TwoPeople, HeavyOut, TightestBlade, HotWaits, Hollow, NotFollowing, ThickStrip, InFromFar, CutsMow, StripLast, Fit, FitAsked, Odd, Feel, Touched, TwoSteps, Cone, LapEdge, CheckFirst, Sound, Loss, Worth, Plan, LapInVain];
}
