using System.Globalization;
using Closemown.Entries;
using Closemown.Height;
using Closemown.Tests.Entries;

namespace Closemown.Tests.Height;

/// <summary>A unit on a bench that behaves as screws do: slack that is pushed before anything moves, hands that stop short, nuts that shift, a gauge that scatters.</summary>
internal sealed class SimulatedUnit
{
    private readonly Random world;
    private readonly Random eye;                          // readings draw from a stream of their own: two ways of working meet the same unit
    private readonly double[] mm, lost, pull, lockShift, slack, height, lockedAt;
    private readonly double gaugeSd;
    private int minute;

    public SimulatedUnit(int seed, double startMm = 5)
    {
        (world, eye) = (new Random(seed), new Random(seed + 100_000));
        var thread = 1.25 + (0.2 * Normal(world));
        mm = [thread * (1 + (0.03 * Normal(world))), thread * (1 + (0.03 * Normal(world)))];
        pull = [Math.Max(0, 0.15 + (0.05 * Normal(world))), Math.Max(0, 0.15 + (0.05 * Normal(world)))];
        lost = [Math.Max(0, 0.12 + (0.05 * Normal(world))) * thread, Math.Max(0, 0.12 + (0.05 * Normal(world))) * thread];
        lockShift = [0.06 * ((2 * world.NextDouble()) - 1), 0.06 * ((2 * world.NextDouble()) - 1)];
        slack = [world.NextDouble() < 0.5 ? 0 : lost[0], world.NextDouble() < 0.5 ? 0 : lost[1]];
        height = [startMm + (0.3 * Normal(world)), startMm + (0.3 * Normal(world))];
        lockedAt = [.. height];
        gaugeSd = 0.02 + (0.03 * world.NextDouble());
    }

    public List<Entry> Book { get; } = [];

    public int Gauged { get; private set; }

    /// <summary>The truth behind what is estimated, by side: height with tight nuts, mm a turn, lost motion in mm.</summary>
    public (double Bench, double MmPerTurn, double LostMm) Truth(int side) => (lockedAt[side], mm[side], lost[side]);

    /// <summary>How far the side that is furthest off is from what was wanted, mm.</summary>
    public double OffMm(BenchPair wanted) => Math.Max(Math.Abs(lockedAt[0] - wanted.LeftMm), Math.Abs(lockedAt[1] - wanted.RightMm));

    public Entry Do(HeightAdvice advice)
    {
        switch (advice.Do)
        {
            case HeightDo.Gauge:
                Gauged++;
                return Write(HeightBook.Gauge(Read(0), Read(1)));
            case HeightDo.Screw:
                Turn(0, advice.Turns.Left);
                Turn(1, advice.Turns.Right);
                return Write(HeightBook.Screw(advice.Turns.Left, advice.Turns.Right));
            default:
                for (var s = 0; s < 2; s++) lockedAt[s] = height[s] + lockShift[s] + (0.015 * Normal(world));
                return Write(HeightBook.Lock);
        }
    }

    /// <summary>Time goes by, and the unit is mown with.</summary>
    public Entry Mown()
    {
        for (var s = 0; s < 2; s++)
        {
            var knock = 0.05 * Normal(world);
            height[s] += knock;
            lockedAt[s] += knock;
        }
        minute += 1000;
        return Write(HeightBook.Mow());
    }

    private double Read(int side) => Math.Round(lockedAt[side] + (gaugeSd * Normal(eye)), 2);

    private void Turn(int side, double turns)
    {
        if (turns == 0) return;
        var push = (turns + (0.012 * Normal(world))) * mm[side];
        double moves;
        if (push > 0)
        {
            moves = Math.Max(0, push - slack[side]);
            slack[side] = Math.Max(0, slack[side] - push);
        }
        else
        {
            var room = lost[side] - slack[side];
            moves = -Math.Max(0, -push - room);
            slack[side] = Math.Min(lost[side], slack[side] - push);
        }
        height[side] += moves;
        height[1 - side] += pull[1 - side] * moves;
    }

    private Entry Write(string body)
    {
        var e = Lines.Entry(body, Book.Count + 1, minute += 2);
        Book.Add(e);
        return e;
    }

    private static double Normal(Random r) => Math.Sqrt(-2 * Math.Log(1 - r.NextDouble())) * Math.Cos(2 * Math.PI * r.NextDouble());

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"thread {mm[0]:0.00}/{mm[1]:0.00} lost {lost[0]:0.00}/{lost[1]:0.00} gauge {gaugeSd:0.000}");
}
