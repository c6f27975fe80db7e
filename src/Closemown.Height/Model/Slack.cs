using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>How far a screw's slack is taken up: which way it was turned last, and how far since it changed direction.</summary>
/// <param name="Direction">Last direction: +1 up, −1 down, 0 not known.</param>
/// <param name="Run">Turns in that direction since it changed.</param>
/// <param name="Share">Share of the lost motion that lay in the way at the change: 1, half where the direction before was not known.</param>
public readonly record struct Slack(int Direction, double Run, double Share)
{
    /// <summary>A screw of which nothing is known.</summary>
    public static Slack Unknown => new(0, 0, 0);

    /// <summary>The slack after a turn.</summary>
    /// <param name="turns">The turn, + up; not 0.</param>
    /// <param name="mmPerTurn">About what a turn moves, mm.</param>
    /// <param name="lostMm">About the whole lost motion, mm.</param>
    internal Slack After(double turns, double mmPerTurn, double lostMm)
    {
        var now = Math.Sign(turns);
        if (now == Direction) return this with { Run = Run + Math.Abs(turns) };
        // A screw that went back only part of the slack has only that part to go again.
        var share = Direction == 0 ? 0.5 : lostMm > 0 ? Math.Min(1, Math.Abs(Run * mmPerTurn) / lostMm) : 1;
        return new(now, Math.Abs(turns), share);
    }
}

/// <summary>What a run of turns moves once the slack is gone: max(0, m·N − s·L), made linear where it may not be gone yet.</summary>
/// <remarks>Statistical linearisation: for X ~ N(μ, σ²), max(0, X) ≈ w·X + o with w = Φ(μ/σ), o = σφ(μ/σ), which keeps the mean and the covariance with X;
/// what is left is noise (Gelb 1974, Applied Optimal Estimation, 6.2, from memory; moments of the truncated normal).</remarks>
internal readonly record struct RunMove(double Weight, double Offset, double RestSd)
{
    public static RunMove None => new(0, 0, 0);

    public static RunMove Of(double mean, double sd)
    {
        if (!(sd > 0)) return mean > 0 ? new(1, 0, 0) : None;
        var z = mean / sd;
        double w = NormalMath.Phi(z), density = NormalMath.Density(z);
        var e = (mean * w) + (sd * density);
        var variance = (((mean * mean) + (sd * sd)) * w) + (mean * sd * density) - (e * e);
        return new(w, sd * density, Math.Sqrt(Math.Max(0, variance - (w * w * sd * sd))));
    }
}
