using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What a plan does to one draw of the steel.</summary>
internal static class ActionEffect
{
    /// <summary>Standard normal columns that a draw must carry behind state and constants: two for the sides, one for the edges.</summary>
    public const int Extras = 3;

    private const int Theta = Layout.StateSize;
    private const int Noise = Theta + Layout.ConstantCount;
    private const double LeastClickUm = 2;
    private const double LightUm = 4;                    // felt under this clearance, less the run-out
    private const double HeavyUm = -12;

    public static NipState Before(ReadOnlySpan<double> x) => new()
    {
        Left = x[Layout.ClearanceLeft],
        Right = x[Layout.ClearanceRight],
        EdgeLeft = Math.Max(0.5, x[Layout.Edge]),
        EdgeCentre = Math.Max(0.5, x[Layout.Edge + 1]),
        EdgeRight = Math.Max(0.5, x[Layout.Edge + 2]),
        Bow = x[Layout.Bow],
    };

    public static NipState After(SteelAction action, ReadOnlySpan<double> x, UnitTrack track, double? grit)
    {
        var s = Before(x);
        switch (action.Do)
        {
            case "close-in":
                CloseIn(ref s, x, track, out _);
                break;
            case "square-up":
                var strip = track.Strip.Um + x[Layout.Strip];
                s.Left = strip + (7 * x[Noise]);
                s.Right = strip + (7 * x[Noise + 1]);
                break;
            case "stone":
                s.EdgeLeft = Halfway(s.EdgeLeft);
                s.EdgeCentre = Halfway(s.EdgeCentre);
                s.EdgeRight = Halfway(s.EdgeRight);
                break;
            case "grind":
            case "repair":
                // Comes back sharp and is set afresh: as good as this unit can be made.
                s.Left = s.Right = ((track.Unit.BandUm.Low + track.Unit.BandUm.High) / 2) + (4 * x[Noise]);
                s.Bow = 3 * x[Noise + 1];
                s.EdgeLeft = s.EdgeCentre = s.EdgeRight = SteelDefaults.EdgeGroundUm.Mean;
                break;
        }
        var known = action.Do == "square-up" ? (1, 1) : track.Memory.Direction;
        s.Left -= Moves(action.Left, known.Item1, 0, x);
        s.Right -= Moves(action.Right, known.Item2, 1, x);
        if (action.LapMinutes > 0) Lap(ref s, action.LapMinutes, x, track.Unit, grit);
        return s;
    }

    /// <summary>Minutes that depend on the draw: the goes it takes to come in until an end touches.</summary>
    public static double Minutes(SteelAction action, ReadOnlySpan<double> x, UnitTrack track, AdviceSettings set)
    {
        if (action.Do != "close-in") return 0;
        var s = Before(x);
        CloseIn(ref s, x, track, out var goes);
        return goes * (set.ClicksMinutes + (4 * set.ClickMinutes) + (2 * set.ContactMinutes));
    }

    /// <summary>Comes in two clicks at a go at each end that has not touched, feels, and backs off one where the touch is heavy.</summary>
    private static void CloseIn(ref NipState s, ReadOnlySpan<double> x, UnitTrack track, out int goes)
    {
        var m = track.Memory;
        goes = 1;
        var touch = x[Theta + Layout.Touch];
        if (!m.Touched(0) && !m.Touched(1)) s.Left = End(s.Left, 0, x, ref goes);
        if (!m.Touched(2) && !m.Touched(1)) s.Right = End(s.Right, 1, x, ref goes);

        double End(double c, int side, ReadOnlySpan<double> x, ref int most)
        {
            var click = Math.Max(LeastClickUm, x[Theta + Layout.Click] + (x[Theta + Layout.ClickSide] * (side == 0 ? 1 : -1)));
            var go = AdviceSettings.MostClicks * click;
            var k = Math.Clamp((int)Math.Ceiling((c - touch - LightUm) / go), 0, 12);
            most = Math.Max(most, k);
            c -= k * go;
            c += SteelDefaults.ClickNoiseUm * Math.Sqrt(2.0 * k) * x[Noise + side];
            return c - touch < HeavyUm ? c + click : c;
        }
    }

    private static double Halfway(double edge) => (edge + SteelDefaults.EdgeLappedUm.Mean) / 2;

    private static double Moves(int n, int direction, int side, ReadOnlySpan<double> x)
    {
        if (n == 0) return 0;
        var click = Math.Max(LeastClickUm, x[Theta + Layout.Click] + (x[Theta + Layout.ClickSide] * (side == 0 ? 1 : -1)));
        var now = Math.Sign(n);
        var lost = direction == now ? 0 : Math.Max(0, x[Theta + Layout.LostMotion + side]) * (direction == 0 ? 0.5 : 1);
        var scatter = SteelDefaults.ClickNoiseUm * Math.Sqrt(Math.Abs(n)) + (direction == now ? 0 : SteelDefaults.ReversalNoiseUm);
        return (n * click) - (now * Math.Min(lost, Math.Abs(n) * click)) + (scatter * x[Noise + side]);
    }

    private static void Lap(ref NipState s, double minutes, ReadOnlySpan<double> x, UnitDescription unit, double? grit)
    {
        var rate = x[Theta + Layout.LapOpening] + (Layout.GritClass(grit) is var c and >= 0 ? x[Theta + c] : 0);
        rate = Math.Max(0.2, rate) * minutes;
        var fresh = Math.Max(1, SteelDefaults.EdgeLappedUm.Mean + (SteelDefaults.EdgeLappedUm.Sd * x[Noise + 2]));
        var centre = ((s.Left + s.Right) / 2) + s.Bow;
        s.EdgeLeft = Sharpen(s.EdgeLeft, s.Left);
        s.EdgeCentre = Sharpen(s.EdgeCentre, centre);
        s.EdgeRight = Sharpen(s.EdgeRight, s.Right);
        var (left, right) = (rate * LapBite.At(s.Left), rate * LapBite.At(s.Right));
        s.Bow += (rate * LapBite.At(centre)) - ((left + right) / 2);
        s.Left += left;
        s.Right += right;

        double Sharpen(double edge, double gap)
        {
            var leaves = LapBite.Leaves(minutes, LapBite.At(gap), unit.Relief);
            return (leaves * edge) + ((1 - leaves) * Math.Min(edge, fresh));
        }
    }
}
