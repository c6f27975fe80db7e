using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>One entry of the latest ones, with all that is needed to live it again.</summary>
internal sealed class Moment(Entry entry, double hours, (int Left, int Right) direction, double sand, PaperStrip? newStrip, double? grit, List<CheckRead> reads, int person, ChainMark mark, int step)
{
    public Entry Entry { get; } = entry;
    public double Hours { get; } = hours;

    /// <summary>Direction of the last move of each adjuster before it.</summary>
    public (int Left, int Right) Direction { get; } = direction;

    /// <summary>How many times faster the edges dulled then.</summary>
    public double Sand { get; } = sand;

    /// <summary>The strip that it brought into use; null for none.</summary>
    public PaperStrip? NewStrip { get; } = newStrip;
    public double? Grit { get; } = grit;
    public List<CheckRead> Reads { get; } = reads;

    /// <summary>What setting the height may have moved each end, where it begins with this entry, µm; 0 for other entries.</summary>
    public double HeightSdUm { get; init; }


    /// <summary>Who read.</summary>
    public int Person { get; } = person;

    /// <summary>The chain and its step before it.</summary>
    public ChainMark Mark { get; set; } = mark;
    public int Step { get; set; } = step;

    /// <summary>The chain's factor of the first noise of its last step, −1 where it moved nothing; and those spreads.</summary>
    public int MoveFactor { get; set; } = -1;
    public double[] MoveSdUm { get; } = new double[Layout.StateSize];

    /// <summary>The chain's factor of its first reading.</summary>
    public int ReadFactor { get; set; } = -1;

    /// <summary>How much more each reading said against what was believed than such a reading says on average, in nats.</summary>
    public double[] Excess { get; } = new double[reads.Count];

    /// <summary>Whether its readings spoke against what was believed.</summary>
    public bool Odd => Excess.Sum() > 2;

    /// <summary>Readings that were found to be mistaken: they count no more.</summary>
    public bool[] Mistaken { get; } = new bool[reads.Count];

    /// <summary>What it was found to have moved besides what it said; null for nothing.</summary>
    public Step? Jump { get; set; }

    /// <summary>The rival explanations about it, as far as they were lived; null before the first were weighed.</summary>
    public RivalLife[]? Lives { get; set; }

    /// <summary>Readings that count.</summary>
    public List<CheckRead> Standing => !Mistaken.AsSpan().Contains(true) ? Reads : [.. Reads.Where((_, i) => !Mistaken[i])];

    /// <summary>What it does to the steel, given the belief just before.</summary>
    public Step[] Moves(UnitDescription unit, GaussianState belief) => Entry.Kind.Name switch
    {
        MowEntry.Name => [Steps.Mow(Hours, Sand, belief)],
        LapEntry.Name => [Steps.Lap(Entry[LapEntry.Minutes]!.Value, Grit, unit, belief)],
        _ => unasked ??= Unasked(),
    };

    private Step[]? unasked;

    /// <summary>What does not ask for the belief.</summary>
    private Step[] Unasked() => Entry.Kind.Name switch
    {
        ClicksEntry.Name => [Steps.Clicks(Entry[ClicksEntry.Left] ?? 0, Entry[ClicksEntry.Right] ?? 0, Direction)],
        SquareUpEntry.Name => Steps.SquareUp(),
        StoneEntry.Name => [Steps.Stone(Entry[StoneEntry.What]!)],
        GrindEntry.Name => Steps.Grind(Entry[GrindEntry.What]!),
        RebuildEntry.Name => Steps.Rebuild(Entry[RebuildEntry.NewKnife] ?? false, Entry[RebuildEntry.GroundOnBar] ?? false),
        ServiceEntry.Name when Entry[ServiceEntry.What] == NipSigns.KnifeScrews => [Steps.KnifeScrews()],
        _ when HeightSdUm > 0 => [Steps.HeightSet(HeightSdUm)],
        StrikeEntry.Name => [Steps.Strike(Stations.IndexOf(Entry[StrikeEntry.Where]))],
        _ => [],
    };
}
