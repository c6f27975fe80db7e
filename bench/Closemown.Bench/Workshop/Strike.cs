namespace Closemown.Bench.Workshop;

/// <summary>Something hit while mowing, about once in a hundred mowings: one station stands off, the ends move, the edge is blunted there. Invented.</summary>
/// <remarks>At a side the seat of that end gives way, which clicks bring back; in the middle the bar bends, which only wear and grinding level.</remarks>
/// <param name="Station">Where.</param>
/// <param name="OffUm">How far it stands off there.</param>
/// <param name="EndsUm">How far the ends move.</param>
/// <param name="BluntsUm">How much it blunts there.</param>
/// <param name="Seen">Whether the person noticed.</param>
/// <param name="PlaceSeen">Whether the person saw where.</param>
internal sealed record Strike(int Station, double OffUm, double[] EndsUm, double BluntsUm, bool Seen, bool PlaceSeen)
{
    private const double Share = 0.01;

    public static Strike? Of(int seed, int outing)
    {
        var r = Chance.Stream(seed, Chance.Of.Jumps, outing);
        if (r.NextDouble() >= Share) return null;
        return new(r.Next(3), Math.Max(0, Chance.Normal(r, 40, 30)), [Chance.Normal(r, 0, 10), Chance.Normal(r, 0, 10)], 12, r.NextDouble() < 0.7, r.NextDouble() < 0.7);
    }
}
