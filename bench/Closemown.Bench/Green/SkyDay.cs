namespace Closemown.Bench.Green;

/// <summary>A day's weather as a station has it.</summary>
internal readonly record struct SkyDay(double TMinC, double TMaxC, double RainMm)
{
    public double MeanC => (TMinC + TMaxC) / 2;
}
