namespace Closemown.Height;

/// <summary>A setting that is wanted, as the unit's gauge reads it with the nuts tight.</summary>
/// <param name="Bench">Bench heights left and right, mm.</param>
/// <param name="TolMm">How far off either side may be, mm; more than 0.</param>
/// <param name="Probability">How sure it must be that both sides are within it; 0.5 to below 1.</param>
public sealed record HeightAim(BenchPair Bench, double TolMm = HeightAim.DefaultTolMm, double Probability = HeightAim.DefaultProbability)
{
    public const double DefaultTolMm = 0.05;
    public const double DefaultProbability = 0.85;

    /// <summary>The same height on both sides.</summary>
    public static HeightAim Of(double benchMm, double tolMm = DefaultTolMm, double probability = DefaultProbability) => new(new(benchMm, benchMm), tolMm, probability);

    /// <summary>The setting that is expected to give a cut, the same on both sides.</summary>
    public static HeightAim ForCut(HeightBelief belief, double cutMm, string? area = null, double tolMm = DefaultTolMm, double probability = DefaultProbability)
    {
        ArgumentNullException.ThrowIfNull(belief);
        return Of(belief.SetBenchMm(cutMm, area).Mean, tolMm, probability);
    }

    internal void Check()
    {
        if (!(Bench.LeftMm > 0 && Bench.RightMm > 0)) throw new ArgumentOutOfRangeException(nameof(Bench), Bench, "A bench height is more than 0 mm.");
        if (!(TolMm > 0 && double.IsFinite(TolMm))) throw new ArgumentOutOfRangeException(nameof(TolMm), TolMm, "A tolerance is more than 0 mm.");
        if (!(Probability >= 0.5 && Probability < 1)) throw new ArgumentOutOfRangeException(nameof(Probability), Probability, "How sure it must be lies from 0.5 to below 1.");
    }
}
