using System.Globalization;

namespace Closemown.Estimation;

/// <summary>Every message of the kernel in one place.</summary>
internal static class ErrorText
{
    public const string TiedToNothing = "is tied to nothing (no prior and no reading)";
    public const string OnlyChanges = "is tied only to its own values at other steps (no starting value and no reading)";
    public const string CureUntied = "add a starting value for it or a reading that sees it";
    public const string CureTogether = "add a starting value for it or a reading that sees it apart from the others";
    public const string CureFar = "correct the entry, or widen its spread";
    public const string NewtonLimit = "The search for the most probable values stopped at its limit of {0} steps; what is shown is not settled.";
    public const string NewtonStuck = "The search for the most probable values found no better point after {0} steps; what is shown is not settled.";
    public const string SweepsLimit = "Moment matching did not settle in {0} sweeps; the most probable values and their curvature (Laplace) are shown instead.";
    public const string SweepsBroke = "Moment matching broke off after {0} sweeps (a reading's share became improper); the most probable values and their curvature (Laplace) are shown instead.";
    public const string MarkAhead = "The mark lies ahead of the model: it was taken from another one, or the model went back further since.";
    public const string Shared = "The shared part of a reading's variance must be from 0 to below 1.";
    public const string NoStep = "The model has no step: call AddStep before asking for a state.";
    public const string Shape = "The warm posterior has another shape ({0} state components, {1} constants) than the model ({2}, {3}).";

    public static string State(string name, int step) => $"state '{name}' at step {N(step)}";

    public static string Constant(string name) => $"constant '{name}'";

    public static string Together(string others) => $"is known only together with {others} (no prior or reading sees it alone)";

    public const string TooLoose = "is held so loosely beside the sharpness of its links that it cannot be told from free";
    public const string CureLoose = "give its links more noise (a millionth of its own spread or more), or add a reading that sees it";

    public static string Reading(int index, string touches) => $"reading {N(index)} (on {touches})";

    public static string FarAway(double spreads) =>
        $"lies {spreads.ToString("0.#e+0", CultureInfo.InvariantCulture)} spreads from what the others say, beyond what numbers can hold";

    public static string NotFinite(string what, double value) => $"{what} must be finite, but is {N(value)}.";

    public static string Spread(double value) => $"The spread (sd) must be positive and finite, but is {N(value)}.";

    public static string GroupSpread(int group, double value) => $"The spread of group {N(group)} must be positive and finite, but is {N(value)}.";

    public static string NoFactor(int index, int count) => $"A spread was given for factor {N(index)}, but there are {N(count)}, from 0.";

    public static string FactorSpread(int index, double value) =>
        $"The spread (sd) of factor {N(index)} must be positive and finite (infinity leaves an interval out), but is {N(value)}.";

    public static string TooSharp(double weight, double sd) =>
        $"Weight {N(weight)} over spread {N(sd)} is beyond what numbers can hold: it must lie within 1e-140 to 1e140.";

    public static string Limits(double low, double high) => $"The low limit must be below the high one, but they are {N(low)} and {N(high)}.";

    public const string NoLimit = "An interval without any limit says nothing: give a low or a high one.";
    public const string NoTerm = "A factor needs at least one term with a weight other than zero.";

    public static string Cuts(double before, double after) => $"Cut-points must rise, but {N(before)} is followed by {N(after)}.";

    public static string PassShape(int d, int m, int wantedD, int wantedM) =>
        $"The Gaussian has another shape ({N(d)} state components, {N(m)} constants) than the pass ({N(wantedD)}, {N(wantedM)}).";

    public static string Category(int category, int count) => $"The category must be 0 to {N(count - 1)} for {N(count - 1)} cut-points, but is {N(category)}.";

    public static string StepOutside(int step, int count) => count == 0
        ? $"Step {N(step)} does not exist: the model has no step yet."
        : $"Step {N(step)} does not exist: the steps are 0 to {N(count - 1)}.";

    public static string ComponentOutside(int index, int count) => $"State component {N(index)} does not exist: there are {N(count)}, from 0.";

    public static string ConstantOutside(int index, int count) => $"Constant {N(index)} does not exist: there are {N(count)}, from 0.";

    public static string NotNeighbours(int first, int second) =>
        $"A predictor may touch two neighbouring steps only, but touches steps {N(first)} and {N(second)}.";

    public static string Length(string what, int wanted, int given) => $"{what} must have {N(wanted)} numbers, but has {N(given)}.";

    public static string Fill(string text, params object[] values) => string.Format(CultureInfo.InvariantCulture, text, values);

    public static string N(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string N(int value) => value.ToString(CultureInfo.InvariantCulture);
}
