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
        if (warm is null || workspace.IntervalCount == 0 || !GaussianPart.Continue(model, workspace, warm)) GaussianPart.Start(model, workspace);
        var found = NewtonMode.Find(model, workspace, options, out var steps);
        Array.Copy(workspace.U, workspace.Mode, workspace.U.Length);
        var remark = found switch
        {
            NewtonMode.Outcome.Limit => ErrorText.Fill(ErrorText.NewtonLimit, steps),
            NewtonMode.Outcome.Stuck => ErrorText.Fill(ErrorText.NewtonStuck, steps),
            _ => null,
        };
        if (workspace.IntervalCount == 0) return AtMode(model, workspace, EstimateKind.Gaussian, remark, steps, 0);
        if (options.Method != EstimateKind.ExpectationPropagation || remark is not null)
        {
            return AtMode(model, workspace, EstimateKind.Laplace, remark, steps, 0);
        }

        var swept = MomentSweeps.Run(model, workspace, options, out var sweeps, out var evidence);
        if (swept == MomentSweeps.Outcome.Settled)
        {
            return new Posterior(model, workspace, EstimateKind.ExpectationPropagation, null, steps, sweeps, evidence);
        }

        remark = ErrorText.Fill(swept == MomentSweeps.Outcome.Limit ? ErrorText.SweepsLimit : ErrorText.SweepsBroke, sweeps);
        Array.Copy(workspace.Mode, workspace.U, workspace.U.Length);
        NewtonMode.Curvature(model, workspace);
        return AtMode(model, workspace, EstimateKind.Laplace, remark, steps, sweeps);
    }

    private static Posterior AtMode(ChainModel model, Workspace w, EstimateKind kind, string? remark, int steps, int sweeps)
    {
        w.Selected.Fill(w.Chain);
        return new Posterior(model, w, kind, remark, steps, sweeps, Evidence.OfMode(w));
    }
}
