using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What a rule of the trade leaves of the actions and checks that the ranking may choose from.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Actions">Whether an action may be chosen.</param>
/// <param name="Checks">Whether any check may be asked for.</param>
internal sealed record Narrowed(Rule Rule, Func<SteelAction, bool> Actions, bool Checks)
{
    /// <summary>A touch is likelier than this two steps further in: then it is come in one by one.</summary>
    private const double TouchLikely = 0.35;

    private const double PressesLikely = 0.5;

    /// <summary>Heavy at an end: that end out by one or two; heavy at both, or in the centre: both.</summary>
    public static Narrowed? HeavyOut(BenchCase c)
    {
        bool At(int s) => c.Memory.LastContact(s) == 0;
        var (left, right) = (At(0) || At(1), At(2) || At(1));
        bool Out(int n, bool heavy) => heavy ? n is -1 or -2 : n == 0;
        // Where every way out was declined the ranking is left alone.
        return c.Declined.Count(d => d.Do == "clicks" && Out(d.Left ?? 0, left) && Out(d.Right ?? 0, right)) >= (left && right ? 4 : 2) ? null
            : new(Rules.HeavyOut, a => a.Do == "clicks" && a.LapMinutes == 0 && Out(a.Left, left) && Out(a.Right, right), Checks: false);
    }

    /// <summary>Only in, step by step, until an end touches or the strip cuts.</summary>
    public static Narrowed InFromFar { get; } = new(Rules.InFromFar, a => a.Do == "close-in", Checks: false);

    /// <summary>Whether the strip folds everywhere, nothing touched since, and another go of two steps at both ends will hardly touch.</summary>
    public static bool Far(BenchCase c)
    {
        if (!c.Signs.FoldsFar || !c.Sitting.Open || c.Memory.AnyTouched || c.WasDeclined("clicks") || c.Memory.FeelWanted) return false;
        return BenchCase.Ends.All(s =>
        {
            var contact = Steel.Checks.Of("contact", s, c.Track.Unit, c.Track.Strip);
            var (mean, variance) = c.Belief.Last.Predict([.. contact.Terms, Estimation.Term.Constant(Layout.Click, -AdviceSettings.MostClicks)]);
            return Estimate.Normal(mean, variance).Below(contact.CutPoints[^1]) < TouchLikely;
        });
    }

    /// <summary>Whether it cuts the strip at all three places as it was found, and the last swath did not speak against it. What was changed in this sitting is set as well as it can be.</summary>
    public static bool Cuts(BenchCase c) => c.Sitting.Open && c.Signs is { CutsEverywhere: true, Turned: false } && !c.Memory.FeelWanted && c.Signs.Swath is null or 0;

    private static bool Presses(BenchCase c) =>
        BenchCase.Ends.Any(s => c.Memory.Touched(s) && c.Belief.ClearanceUm(s).Below(c.Track.Unit.BandUm.Low) > PressesLikely);

    /// <summary>It mows; at most one further check, and an end that more likely presses than not may come out, but nothing comes in and nothing is lapped.</summary>
    public static Narrowed CutsSoMow(BenchCase c) =>
        new(Rules.CutsMow, a => a.Do == "leave" || (Presses(c) && a is { Do: "clicks", LapMinutes: 0, Left: <= 0, Right: <= 0 }), Checks: c.Signs is { OtherChecks: 0, FurtherChecks: 0 });
}
