using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace Closemown.Fuzzing;

/// <summary>An input that a reader could not stand.</summary>
/// <param name="Signature">The same for every input that ends at the same place in the same way.</param>
/// <param name="Told">The exception in full.</param>
/// <param name="Input">The input.</param>
public sealed record Crash(string Signature, string Told, byte[] Input)
{
    private const int SmallerTries = 3000;
    private const double SmallerSeconds = 5;

    /// <summary>A short name for a file.</summary>
    public string FileName => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Signature)))[..12];

    /// <summary>Runs an input; null where all laws are kept.</summary>
    public static Crash? Of(FuzzTarget target, byte[] input)
    {
        ArgumentNullException.ThrowIfNull(target);
        try
        {
            target.Run(input);
            return null;
        }
        catch (Exception e)
        {
            return new(Sign(e), e.ToString(), input);
        }
    }

    /// <summary>The smallest input found that crashes alike: pieces are left out, larger ones first.</summary>
    public Crash Smaller(FuzzTarget target)
    {
        var best = this;
        var (tries, watch) = (0, Stopwatch.StartNew());
        for (var piece = Math.Max(1, Input.Length / 2); piece > 0; piece /= 2)
        {
            for (var at = 0; at < best.Input.Length;)
            {
                if (++tries > SmallerTries || watch.Elapsed.TotalSeconds > SmallerSeconds) return best;
                byte[] less = [.. best.Input.AsSpan(0, at), .. best.Input.AsSpan(Math.Min(best.Input.Length, at + piece))];
                if (Of(target, less) is { } again && again.Signature == Signature) best = again;
                else at += piece;
            }
        }
        return best;
    }

    /// <summary>The input as a person can read it.</summary>
    public string Shown()
    {
        var text = new StringBuilder();
        foreach (var c in Encoding.UTF8.GetString(Input)) text.Append(char.IsControl(c) || c > 126 ? $"\\u{(int)c:x4}" : c);
        return text.ToString();
    }

    /// <summary>What is the same for every exception that came from the same place in the same way.</summary>
    public static string Sign(Exception e)
    {
        ArgumentNullException.ThrowIfNull(e);
        if (e is LawBrokenException law) return law.Law;
        // The innermost of our own methods alone: those around it may or may not be inlined.
        var own = (e.StackTrace ?? "").Split('\n').Select(l => l.Trim()).FirstOrDefault(IsOwn, "");
        return own.Length == 0 ? e.GetType().Name : $"{e.GetType().Name} {own[3..].Split('(')[0]}";
    }

    private static bool IsOwn(string frame) =>
        frame.StartsWith("at Closemown.", StringComparison.Ordinal) && !frame.Contains("Closemown.Fuzzing", StringComparison.Ordinal) && !frame.Contains(".Tests.", StringComparison.Ordinal);
}
