using System.Text.Json.Nodes;

namespace Closemown.Advice;

/// <summary>A number as it is known from samples.</summary>
public readonly record struct SampledNumber(double Mean, double Sd, double P05, double P50, double P95, double OverThird)
{
    /// <summary>From samples, which are put in order.</summary>
    public static SampledNumber Of(double[] samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        Array.Sort(samples);
        var mean = samples.Average();
        double At(double p)
        {
            var x = p * (samples.Length - 1);
            var i = (int)x;
            return i + 1 < samples.Length ? samples[i] + ((x - i) * (samples[i + 1] - samples[i])) : samples[i];
        }
        return new(mean, Math.Sqrt(samples.Average(s => (s - mean) * (s - mean))), At(0.05), At(0.5), At(0.95), samples.Count(s => s > 1.0 / 3) / (double)samples.Length);
    }

    /// <summary>In the shape of the contract.</summary>
    public JsonObject ToJson() => new() { ["mean"] = Mean, ["sd"] = Sd, ["p05"] = P05, ["p50"] = P50, ["p95"] = P95 };
}
