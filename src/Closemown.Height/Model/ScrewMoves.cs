namespace Closemown.Height;

/// <summary>A side that does not follow its screw: what was turned and what it made, move by move, the latest last.</summary>
/// <param name="Side">0 left, 1 right.</param>
/// <param name="Moves">For each of the last two moves: what the turns should have come to, lost motion taken off, and what the side made of itself, mm, + up.</param>
public sealed record SideLags(int Side, IReadOnlyList<(double TurnedMm, double MadeMm)> Moves);

/// <summary>What the gauge said before and after the screws were turned: whether each side followed.</summary>
/// <remarks>A side that does not follow is a fault, not noise (common practice, no source). It is held against the thread as the unit starts, as a
/// learned one would have given way to the fault.</remarks>
internal sealed class ScrewMoves
{
    /// <summary>Less than this share of what was turned is no following.</summary>
    private const double LeastShare = 0.5;

    /// <summary>A smaller move tells nothing: it is of the size of what a gauge scatters, mm.</summary>
    private const double LeastMm = 0.25;

    /// <summary>Moves in a row that tell.</summary>
    private const int Enough = 2;

    private readonly List<double>[] read = [[], []];      // since the last turn
    private readonly bool[] looseRead = [false, false];
    private readonly double?[] before = [null, null];
    private readonly double[] turned = [0, 0];
    private readonly int[] changes = [0, 0];              // of direction, in what was turned
    private readonly int[] direction = [0, 0];
    private readonly List<(double TurnedMm, double MadeMm)>[] lagged = [[], []];   // the latest moves in a row that a side did not follow

    /// <summary>Readings of a side since a screw was last turned, in order, mm.</summary>
    public IReadOnlyList<double> SinceTurn(int side) => read[side];

    /// <param name="side">0 left, 1 right.</param>
    /// <param name="mm">The reading; with loose nuts, what it would be with tight ones as far as is known.</param>
    /// <param name="locked">Whether the nuts were tight: then readings with loose ones count no more.</param>
    public void Read(int side, double mm, bool locked)
    {
        if (locked && looseRead[side]) read[side].Clear();
        looseRead[side] = !locked;
        read[side].Add(mm);
    }

    public void Turned(ScrewTurns turns, HeightUnit unit)
    {
        if (read[0].Count + read[1].Count > 0)
        {
            Judge(unit);
            for (var side = 0; side < 2; side++)
            {
                before[side] = Middle(side);
                read[side].Clear();
                (turned[side], changes[side]) = (0, 0);
            }
        }
        for (var side = 0; side < 2; side++)
        {
            var n = side == 0 ? turns.Left : turns.Right;
            turned[side] += n;
            if (n == 0 || Math.Sign(n) == direction[side]) continue;
            changes[side]++;
            direction[side] = Math.Sign(n);
        }
    }

    /// <summary>It was moved otherwise than by its screws: what was read before tells nothing of the next move.</summary>
    /// <param name="repaired">Whether the fault of a side may be gone with it.</param>
    public void Elsewhere(bool repaired)
    {
        for (var side = 0; side < 2; side++)
        {
            read[side].Clear();
            (before[side], turned[side], changes[side], direction[side]) = (null, 0, 0, 0);
            if (repaired) lagged[side].Clear();
        }
    }

    /// <summary>The sides that did not follow their last two moves.</summary>
    public IReadOnlyList<SideLags> Lagging(HeightUnit unit)
    {
        var found = new List<SideLags>();
        var now = Now(unit);
        for (var side = 0; side < 2; side++)
        {
            List<(double, double)> row = now[side] is not { } move ? lagged[side] : move.Follows ? [] : [.. lagged[side], (move.TurnedMm, move.MadeMm)];
            if (row.Count >= Enough) found.Add(new(side, [.. row.TakeLast(Enough)]));
        }
        return found;
    }

    /// <summary>A move that was read on both ends joins the row, or ends it.</summary>
    private void Judge(HeightUnit unit)
    {
        var now = Now(unit);
        for (var side = 0; side < 2; side++)
        {
            if (now[side] is not { } move) continue;
            if (move.Follows) lagged[side].Clear();
            else lagged[side].Add((move.TurnedMm, move.MadeMm));
        }
    }

    /// <summary>The move between the readings before and after the last turns, by side; null where it tells nothing.</summary>
    private (double TurnedMm, double MadeMm, bool Follows)?[] Now(HeightUnit unit)
    {
        double mm = unit.MmPerTurnStart.Mean, lost = unit.Start("lostTurns", HeightDefaults.LostTurns).Mean * mm, pull = unit.Start("pullShare", HeightDefaults.PullShare).Mean;
        double?[] rose = [Middle(0) - before[0], Middle(1) - before[1]];
        var moves = new (double TurnedMm, double MadeMm, bool Follows)?[2];
        for (var side = 0; side < 2; side++)
        {
            if (rose[side] is not { } all) continue;
            var wanted = Math.Max(0, (Math.Abs(turned[side]) * mm) - (changes[side] * lost));
            if (wanted < LeastMm) continue;
            // What the other side pulled is no merit of this one: own + p·other = rose on both sides; unread, it is taken to have followed.
            var own = rose[1 - side] is { } other ? (all - (pull * other)) / (1 - (pull * pull)) : all - (pull * mm * turned[1 - side]);
            var made = own * Math.Sign(turned[side]);
            moves[side] = (Math.Sign(turned[side]) * wanted, own, made >= LeastShare * wanted);
        }
        // Both alike, and nobody told the thread: it is finer than reckoned, which the record learns.
        if (unit.ToldMmPerTurn is null && moves[0] is { Follows: false } && moves[1] is { Follows: false }) return [null, null];
        return moves;
    }

    private double? Middle(int side)
    {
        if (read[side].Count == 0) return null;
        var sorted = read[side].Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
