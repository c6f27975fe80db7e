using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What one mowing with a given nip costs, in minutes: torn leaf, out of tolerance, pressing, and the bluntness carried on.</summary>
internal sealed class MowingLoss
{
    private const double ToleranceSoftUm = 2;
    private readonly AdviceSettings set;
    private readonly NipFuture future;
    private readonly double low;
    private readonly double high;
    private readonly double clean;
    private readonly double hours;
    private readonly double left0, left2;

    public MowingLoss(AdviceSettings settings, UnitDescription unit, double hours, NipFuture future)
    {
        (set, this.hours, this.future) = (settings, hours, future);
        (low, high) = unit.BandUm;
        clean = unit.CleanUm.Mean;
        (left0, left2) = (unit.Weights(0).Left, unit.Weights(2).Left);
    }

    /// <summary>The loss of mowing once with that nip.</summary>
    /// <param name="s">The nip before the mowing.</param>
    /// <param name="x">The draw it came from: state, then constants.</param>
    public double Of(in NipState s, ReadOnlySpan<double> x)
    {
        var (openLeft, openRight, dull) = Rates(x);
        var first = Stations(s, 0, 0, 0);
        var mid = Stations(s, openLeft / 2, openRight / 2, dull / 2);
        var last = Stations(s, openLeft, openRight, dull);
        var limit = clean + x[Layout.StateSize + Layout.CleanOffset];
        var torn = (Torn(mid.GapLeft + mid.EdgeLeft - limit) + Torn(mid.GapCentre + mid.EdgeCentre - limit) + Torn(mid.GapRight + mid.EdgeRight - limit)) / 3;
        var outside = (Outside(first) + Outside(last)) / 2;
        var pressed = Math.Max(0, set.GuardUm - Math.Min(mid.GapLeft, Math.Min(mid.GapCentre, mid.GapRight)));
        var press = hours * ((set.PressedUmHour * Math.Min(pressed, set.PressingKneeUm)) + (set.HardPressedUmHour * Math.Max(0, pressed - set.PressingKneeUm)));
        var carried = (future.At(last.GapLeft, last.EdgeLeft) + future.At(last.GapCentre, last.EdgeCentre) + future.At(last.GapRight, last.EdgeRight)) / 3;
        // No click levels a bow: what goes beyond the band will have to be lapped away, or is out of tolerance at every mowing to come.
        carried += set.BowUm * Math.Max(0, Math.Abs(s.Bow) - ((high - low) / 2));
        return (set.TornMowing * torn) + (set.OutOfTolerance * outside) + press + carried;
    }

    /// <summary>Share of leaf cut clean, 0–1.</summary>
    public double Clean(in NipState s, ReadOnlySpan<double> x)
    {
        var (openLeft, openRight, dull) = Rates(x);
        var mid = Stations(s, openLeft / 2, openRight / 2, dull / 2);
        var limit = clean + x[Layout.StateSize + Layout.CleanOffset];
        return 1 - ((Torn(mid.GapLeft + mid.EdgeLeft - limit) + Torn(mid.GapCentre + mid.EdgeCentre - limit) + Torn(mid.GapRight + mid.EdgeRight - limit)) / 3);
    }

    /// <summary>Whether the clearance is in tolerance at all three stations before the mowing.</summary>
    public bool InTolerance(in NipState s)
    {
        var p = Stations(s, 0, 0, 0);
        return Math.Min(p.GapLeft, Math.Min(p.GapCentre, p.GapRight)) >= low && Math.Max(p.GapLeft, Math.Max(p.GapCentre, p.GapRight)) <= high;
    }

    /// <summary>The nip after so many mowings.</summary>
    public NipState After(in NipState s, ReadOnlySpan<double> x, int mowings)
    {
        var (openLeft, openRight, dull) = Rates(x);
        var t = s;
        t.Left += openLeft * mowings;
        t.Right += openRight * mowings;
        t.EdgeLeft += dull * mowings;
        t.EdgeCentre += dull * mowings;
        t.EdgeRight += dull * mowings;
        return t;
    }

    private (double Left, double Right, double Dull) Rates(ReadOnlySpan<double> x)
    {
        const int T = Layout.StateSize;
        return (Math.Max(0, x[T + Layout.OpeningPerOuting]) + (Math.Max(0, x[T + Layout.OpeningPerHour]) * hours),
            Math.Max(0, x[T + Layout.OpeningPerOuting + 1]) + (Math.Max(0, x[T + Layout.OpeningPerHour + 1]) * hours),
            Math.Max(0, x[T + Layout.Dulling]) * hours);
    }

    private Nip Stations(in NipState s, double openLeft, double openRight, double dull)
    {
        var l = s.Left + openLeft;
        var r = s.Right + openRight;
        return new((left0 * l) + ((1 - left0) * r), ((l + r) / 2) + s.Bow, (left2 * l) + ((1 - left2) * r), s.EdgeLeft + dull, s.EdgeCentre + dull, s.EdgeRight + dull);
    }

    private static double Torn(double above) => Step(above / SteelDefaults.TearSpreadUm);

    private double Outside(in Nip p)
    {
        var least = Math.Min(p.GapLeft, Math.Min(p.GapCentre, p.GapRight));
        var most = Math.Max(p.GapLeft, Math.Max(p.GapCentre, p.GapRight));
        return Step(-Math.Min(least - set.GuardUm - low, high - most) / ToleranceSoftUm);
    }

    /// <summary>A smooth step from 0 to 1, within 0.01 of the normal distribution function.</summary>
    private static double Step(double z) => 1 / (1 + Math.Exp(-1.702 * z));

    private readonly record struct Nip(double GapLeft, double GapCentre, double GapRight, double EdgeLeft, double EdgeCentre, double EdgeRight);
}
