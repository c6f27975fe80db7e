namespace Closemown.Quantities;

public sealed record PlausibleRange(double Low, double High);
public sealed record SlipCandidate(double Value, string Written);
public sealed record SlipQuestion(string Why, IReadOnlyList<SlipCandidate> Candidates);
public static class PlausibleRanges { public static PlausibleRange? Find(string field) => field == "never" ? new(0, 1) : null; }
public static class UnitSlip { public static SlipQuestion? Check(double value, PlausibleRange range) => value < 0 && range is null ? new("", []) : null; }
