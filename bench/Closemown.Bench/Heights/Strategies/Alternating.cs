namespace Closemown.Bench.Heights.Strategies;

/// <summary>The side that is further off each time.</summary>
internal sealed class Alternating(bool fromBelow) : Practice(fromBelow)
{
    protected override int Side(double[] off) => Math.Abs(off[0]) >= Math.Abs(off[1]) ? 0 : 1;
}
