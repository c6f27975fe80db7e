namespace Closemown.Estimation;

/// <summary>Posterior of a <see cref="ChainModel"/>: mode by Newton, then matched moments, with the marginals of every step.</summary>
/// <remarks>Deterministic: the same model gives the same bits on the same machine. A warm solution agrees with a cold one to about 1e-6 posterior spreads.</remarks>
public static class Solver
{
    /// <summary>Solves with fresh buffers.</summary>
    /// <param name="model">The model; not changed.</param>
    /// <param name="options">Limits; the defaults when null.</param>
    /// <param name="warm">A posterior of an earlier, shorter or slightly different model with the same names, as the place to start.</param>
    /// <exception cref="EstimationException">A variable is tied to nothing, or a reading lies beyond what numbers can hold.</exception>
    /// <exception cref="ArgumentException">The warm posterior has another shape.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static Posterior Solve(ChainModel model, SolveOptions? options = null, Posterior? warm = null) => SolveIn(new Workspace(), model, options, warm);

    /// <summary>Solves in buffers that are used again.</summary>
    /// <inheritdoc cref="Solve(ChainModel, SolveOptions?, Posterior?)"/>
    public static Posterior SolveIn(Workspace workspace, ChainModel model, SolveOptions? options = null, Posterior? warm = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(workspace);
        options = (options ?? new SolveOptions()).Checked();
        if (warm is not null && (warm.StateSize != model.StateSize || warm.ConstantCount != model.ConstantCount))
        {
            throw new ArgumentException(
                ErrorText.Fill(ErrorText.Shape, warm.StateSize, warm.ConstantCount, model.StateSize, model.ConstantCount), nameof(warm));
        }

        workspace.Reset(model);
        Spreads.Fill(model, options, workspace);
        GaussianPart.Assemble(model, workspace);
        var matches = options.Method == EstimateKind.ExpectationPropagation && workspace.IntervalCount > 0;
        if (matches) workspace.Sites.Fill(model.Rows, workspace, options.JoinsRepeats);
        var continued = warm is not null && workspace.IntervalCount > 0 && GaussianPart.Continue(model, workspace, warm);
        if (continued && matches && warm!.Sites is { } sites)
        {
            if (sites.TakeOver(model, workspace, warm) && MomentSweeps.Run(model, workspace, options, out var few, out var known) == MomentSweeps.Outcome.Settled) return Matched(model, workspace, 0, few, known);
            continued = false;
        }

        if (!continued) GaussianPart.Start(model, workspace);
        var remark = Remark(NewtonMode.Find(model, workspace, options, matches ? NewtonMode.Rough : NewtonMode.Arrived, out var steps), steps);
        if (workspace.IntervalCount == 0) return AtMode(model, workspace, EstimateKind.Gaussian, remark, steps, 0);
        if (!matches || remark is not null) return AtMode(model, workspace, EstimateKind.Laplace, remark, steps, 0);
        Array.Copy(workspace.U, workspace.Mode, workspace.U.Length);
        MomentSweeps.StartFromMode(model.Rows, workspace);
        var swept = MomentSweeps.Run(model, workspace, options, out var sweeps, out var evidence);
        if (swept == MomentSweeps.Outcome.Settled) return Matched(model, workspace, steps, sweeps, evidence);
        Array.Copy(workspace.Mode, workspace.U, workspace.U.Length);
        remark = Remark(NewtonMode.Find(model, workspace, options with { MaxNewtonSteps = options.MaxNewtonSteps - steps }, NewtonMode.Arrived, out var more), steps + more)
            ?? ErrorText.Fill(swept == MomentSweeps.Outcome.Limit ? ErrorText.SweepsLimit : ErrorText.SweepsBroke, sweeps);
        return AtMode(model, workspace, EstimateKind.Laplace, remark, steps + more, sweeps);
    }

    private static string? Remark(NewtonMode.Outcome found, int steps) => found switch
    {
        NewtonMode.Outcome.Limit => ErrorText.Fill(ErrorText.NewtonLimit, steps),
        NewtonMode.Outcome.Stuck => ErrorText.Fill(ErrorText.NewtonStuck, steps),
        _ => null,
    };

    private static Posterior Matched(ChainModel model, Workspace w, int steps, int sweeps, double evidence) =>
        new(model, w, EstimateKind.ExpectationPropagation, null, steps, sweeps, evidence);

    private static Posterior AtMode(ChainModel model, Workspace w, EstimateKind kind, string? remark, int steps, int sweeps)
    {
        w.Selected.Fill(w.Chain);
        return new Posterior(model, w, kind, remark, steps, sweeps, Evidence.OfMode(w));
    }
}
