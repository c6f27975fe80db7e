namespace Closemown.Bench.Green;

/// <summary>
/// How high the turf is brown, by the sheaths of the leaves now alive: each set grows them as long as the turf stood when it came up.
/// </summary>
/// <remarks>
/// A new set comes up each <see cref="SetDegrees"/> degree-days and the oldest dies, so in cool weeks the base stays where it is. It
/// lies between the mean of the sets and the longest.
/// Number of sets and degree-days: assumptions.
/// </remarks>
internal sealed class OtherBase
{
    private const double SetDegrees = 60;
    private const double StubsUnderMm = 0.3;
    private const int Sets = 4;
    private readonly double share, passed, stoodMm;
    private readonly double[] sheathsMm;

    public OtherBase(double share, double standsMm)
        : this(share, [.. Enumerable.Repeat(share * standsMm, Sets)], 0, 0)
    {
    }

    private OtherBase(double share, double[] sheathsMm, double passed, double stoodMm) =>
        (this.share, this.sheathsMm, this.passed, this.stoodMm) = (share, sheathsMm, passed, stoodMm);

    public double Mm => (sheathsMm.Average() + sheathsMm.Max()) / 2;

    /// <summary>A day on; the sum of heights is weighted by the degrees of their days.</summary>
    public OtherBase After(double degrees, double canopyMm)
    {
        var (sum, stood) = (passed + degrees, stoodMm + (degrees * canopyMm));
        return sum < SetDegrees ? new(share, sheathsMm, sum, stood) : new(share, [.. sheathsMm[1..], share * stood / sum], 0, 0);
    }

    /// <summary>
    /// What is cut through does not stand any more: new leaf comes out of the stubs, which die back a little under the cut.
    /// </summary>
    public OtherBase Cut(double cutMm) => new(share, [.. sheathsMm.Select(s => s > cutMm ? cutMm - StubsUnderMm : s)], passed, stoodMm);
}
