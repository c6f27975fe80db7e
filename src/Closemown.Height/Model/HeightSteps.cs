using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>What each action does to the height, given the belief just before it.</summary>
internal static class HeightSteps
{
    /// <summary>Height screws turned: each raises its own side and pulls the other; what only takes up slack raises nothing.</summary>
    /// <param name="turns">The turns, + raises.</param>
    /// <param name="before">Slack of each screw before.</param>
    /// <param name="belief">The belief just before.</param>
    /// <param name="after">Slack of each screw after.</param>
    public static HeightStep Turn(ScrewTurns turns, (Slack Left, Slack Right) before, GaussianState belief, out (Slack Left, Slack Right) after)
    {
        var step = new HeightStep();
        after = (Side(0, turns.Left, before.Left), Side(1, turns.Right, before.Right));
        return step;

        Slack Side(int side, double n, Slack slack)
        {
            if (n == 0) return slack;
            int other = 1 - side, sign = Math.Sign(n);
            double mm = Mean(belief, HeightLayout.Turn + side), lost = Math.Max(0, Mean(belief, HeightLayout.Lost + side));
            var next = slack.After(n, mm, lost);
            var turned = sign != slack.Direction;
            var unlike = !turned ? 0 : lost * (slack.Direction == 0 ? HeightDefaults.UnknownSlackShare : HeightDefaults.ReversalShare);
            var end = At(belief, side, next.Run, next.Share, unlike);
            var start = turned ? RunMove.None : At(belief, side, slack.Run, slack.Share, 0);
            double run = (end.Weight * next.Run) - (turned ? 0 : start.Weight * slack.Run), gone = (end.Weight - start.Weight) * next.Share;
            var noise = Math.Sqrt((HeightDefaults.HandTurns * mm * HeightDefaults.HandTurns * mm) + (end.Weight * unlike * end.Weight * unlike)
                + (end.RestSd * end.RestSd) + (start.RestSd * start.RestSd));
            step.Constant(side, HeightLayout.Turn + side, sign * run).Constant(side, HeightLayout.Lost + side, -sign * gone)
                .Add(side, sign * (end.Offset - start.Offset)).Noise(side, noise);
            // The other side is pulled by the turns that arrive. Pull × slack is no longer linear, so there the pull's share is held at its mean.
            var share = mm > 0 ? Mean(belief, HeightLayout.Pull + other) / mm : 0;
            step.Constant(other, HeightLayout.Pull + other, sign * run).Constant(other, HeightLayout.Lost + side, -sign * gone * share)
                .Add(other, sign * share * (end.Offset - start.Offset)).Noise(other, share * noise);
            return next;
        }
    }

    /// <summary>The nuts tightened: their own scatter. The state is the height with the nuts tight, so their systematic shift is part of it.</summary>
    public static HeightStep Tighten() => new HeightStep().BothSides(HeightDefaults.LockScatterMm);

    /// <summary>Between two sittings: knocks.</summary>
    public static HeightStep Knock() => new HeightStep().BothSides(HeightDefaults.KnockMm);

    public static HeightStep Strike() => new HeightStep().BothSides(HeightDefaults.StrikeMm);

    /// <summary>The bedknife ground: its edge is elsewhere.</summary>
    public static HeightStep Grind() => new HeightStep().BothSides(HeightDefaults.GrindMm);

    public static HeightStep Rebuild() => new HeightStep().BothSides(HeightDefaults.RebuildMm);

    /// <summary>So many mowings: the ground has grown softer or firmer.</summary>
    public static HeightStep Season(this HeightStep step, int mowings) => step.Noise(HeightLayout.Season, HeightDefaults.SeasonMm * Math.Sqrt(mowings));

    /// <summary>Another mowing: its own grain.</summary>
    public static HeightStep NewMowing() => new HeightStep().Renew(HeightLayout.Grain, HeightDefaults.GrainMm);

    private static RunMove At(GaussianState belief, int side, double run, double share, double unlikeMm)
    {
        var (mean, variance) = belief.Predict([Term.Constant(HeightLayout.Turn + side, run), Term.Constant(HeightLayout.Lost + side, -share)]);
        return RunMove.Of(mean, Math.Sqrt(variance + (unlikeMm * unlikeMm)));
    }

    private static double Mean(GaussianState belief, int constant) => belief.Mean[belief.StateSize + constant];
}
