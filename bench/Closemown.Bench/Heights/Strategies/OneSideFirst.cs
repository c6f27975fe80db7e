namespace Closemown.Bench.Heights.Strategies;

/// <summary>The left side until it reads right, then the right side; then over again while either is not.</summary>
internal sealed class OneSideFirst() : Practice(fromBelow: false)
{
    private int side;

    protected override void Begin() => side = 0;

    protected override int Side(double[] off)
    {
        if (Right(off[side])) side = 1 - side;
        return side;
    }
}
