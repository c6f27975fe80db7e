namespace Closemown.Bench.Green;

/// <summary>The worlds that greens are tried in.</summary>
/// <param name="Name">What the option <c>--world</c> names it by.</param>
/// <param name="Title">For its table.</param>
/// <param name="Of">Draws a season of it: seed, days, whether growth rates lie wide apart.</param>
internal sealed record GreenWorlds(string Name, string Title, Func<int, int, bool, GreenLot> Of)
{
    /// <summary>Days that are drawn past the season's end, for what is told of the future.</summary>
    public const int Past = 70;

    /// <summary>At the start of a season the turf stands this much over the cut, mm.</summary>
    public const double StartOverMm = 1;

    /// <summary>The other world's readings draw other chance than the first's.</summary>
    private const int OtherReads = 1_000_000;

    public static IReadOnlyList<GreenWorlds> All { get; } = [new("own", "own world", Own), new("other", "other laws", Other)];

    /// <summary>Those that a word names: one of them, or both.</summary>
    public static IReadOnlyList<GreenWorlds> Named(string word) =>
        word == "both" ? All : All.Where(w => w.Name == word).ToList() is { Count: > 0 } one ? one
            : throw new ArgumentException($"There is no world {word}: {string.Join(", ", All.Select(w => w.Name))}, both.");

    private static GreenLot Own(int seed, int days, bool wide)
    {
        var (make, first) = (GreenMake.Of(seed, wide), GreenSky.First(seed));
        var wish = new GreenWish(make, first);
        var green = new GreenWorld(seed, make, GreenSky.Of(seed, days + Past), wish.StartMm + StartOverMm);
        return new(seed, first, green, wish, GreenPerson.Free(seed, make, first, days + Past));
    }

    private static GreenLot Other(int seed, int days, bool wide)
    {
        var (make, first, sky) = (OtherMake.Of(seed, wide), OtherSky.First(seed), OtherSky.Of(seed, days + Past));
        var wish = new GreenWish(make.Seen, first);
        var free = OtherPerson.Free(seed, make.Seen, first, days + Past, t => sky[t + OtherSky.Before].Seen);
        return new(OtherReads + seed, first, new OtherGreen(seed, make, sky, free, wish.StartMm + StartOverMm), wish, free);
    }
}
