using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>The turns that bring both sides to a height, coming up to it from below while the lost motion is not known well.</summary>
internal static class ScrewChoice
{
    /// <summary>Lost motion known to this share of the tolerance may be crossed straight.</summary>
    private const double KnownShare = 0.4;

    /// <summary>A landing less certain than the tolerance aims short by this share of its spread: what is then left is a turn up, without reversal.</summary>
    private const double ShortShare = 0.5;

    /// <summary>Room below the height, besides the slack, to come up through, mm.</summary>
    private const double RoomMm = 0.1;

    /// <summary>The turns to make now.</summary>
    /// <param name="g">What is believed now.</param>
    /// <param name="slack">Slack of each screw.</param>
    /// <param name="aim">What is wanted.</param>
    /// <param name="comesRound">Whether a side goes below first, to come up in a second turn.</param>
    public static ScrewTurns Of(GaussianState g, (Slack Left, Slack Right) slack, HeightAim aim, out bool comesRound)
    {
        var turns = To(g, slack, aim, aim.Bench, out comesRound);
        if (comesRound) return turns;
        var after = Landing(g, slack, turns);
        double Short(int side, double n) => n > 0 && after.Sd(side) > aim.TolMm ? ShortShare * after.Sd(side) : 0;
        double left = Short(0, turns.Left), right = Short(1, turns.Right);
        if (left == 0 && right == 0) return turns;
        var nearer = To(g, slack, aim, new(aim.Bench.LeftMm - left, aim.Bench.RightMm - right), out var round);
        // Where nothing would be left to turn, or a side would have to go down for it, aim straight.
        return round || nearer is { Left: 0, Right: 0 } ? turns : nearer;
    }

    /// <summary>What is believed after turns and tightening.</summary>
    public static Landed Landing(GaussianState g, (Slack Left, Slack Right) slack, ScrewTurns turns)
    {
        var pass = new ForwardPass(g);
        if (turns is not { Left: 0, Right: 0 }) HeightSteps.Turn(turns, slack, g, out _).MoveForward(pass);
        HeightSteps.Tighten().MoveForward(pass);
        return new(pass.Current);
    }

    private static ScrewTurns To(GaussianState g, (Slack Left, Slack Right) slack, HeightAim aim, BenchPair target, out bool comesRound)
    {
        // Turns that arrive: m_L n_L + p_L n_R = d_L, p_R n_L + m_R n_R = d_R.
        double ml = C(HeightLayout.Turn), mr = C(HeightLayout.Turn + 1), pl = C(HeightLayout.Pull), pr = C(HeightLayout.Pull + 1);
        double dl = target.LeftMm - g.Mean[0], dr = target.RightMm - g.Mean[1], det = (ml * mr) - (pl * pr);
        var net = (Left: ((dl * mr) - (pl * dr)) / det, Right: ((ml * dr) - (pr * dl)) / det);
        var left = Side(0, net.Left, slack.Left, out var leftRound);
        var right = Side(1, net.Right, slack.Right, out var rightRound);
        comesRound = leftRound || rightRound;
        // What comes up waits until what goes below has gone: both then come up together.
        if (comesRound) (left, right) = (leftRound || left < 0 ? left : 0, rightRound || right < 0 ? right : 0);
        return new(left, right);

        double Side(int side, double n, Slack s, out bool round)
        {
            round = false;
            if (Math.Abs(n) < HeightDefaults.SmallestTurn) return 0;
            double mm = C(HeightLayout.Turn + side), lost = Math.Max(0, C(HeightLayout.Lost + side)) / mm;
            var sign = Math.Sign(n);
            var next = s.After(n, mm, lost * mm);
            var inTheWay = sign == s.Direction ? Math.Max(0, (s.Share * lost) - s.Run) : next.Share * lost;
            var sd = Math.Sqrt(g.Predict([Term.Constant(HeightLayout.Lost + side, 1)]).Variance);
            if (sign > 0 || sign == s.Direction || sd <= KnownShare * aim.TolMm) return n + (sign * inTheWay);
            // Down by more, then up by y: of the slack only what the two ways differ in is left.
            round = true;
            var y = lost + (((2 * sd) + RoomMm) / mm);
            return n - y + (lost - inTheWay);
        }

        double C(int constant) => g.Mean[g.StateSize + constant];
    }

    /// <summary>A belief after a step.</summary>
    internal readonly record struct Landed(GaussianState Belief)
    {
        public double Sd(int side) => Math.Sqrt(Belief.Covariance[(side * Belief.Size) + side]);

        public HeightEstimate Side(int side) => new(Belief.Mean[side], Sd(side));

        public double Within(HeightAim aim) => BoxProbability.Of(Belief, aim.Bench, aim.TolMm);
    }
}
