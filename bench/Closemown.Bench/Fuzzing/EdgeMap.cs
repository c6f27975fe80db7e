using System.Numerics;
using System.Runtime.InteropServices;
using SharpFuzz.Common;

namespace Closemown.Bench.Fuzzing;

/// <summary>The counters that instrumented code writes to: one for each branch from one block to another, some sharing one.</summary>
internal sealed unsafe class EdgeMap : IDisposable
{
    private const int Size = 1 << 16;

    /// <summary>For each counter, the orders of magnitude seen so far, as bits.</summary>
    private readonly byte[] seen = new byte[Size];
    private byte* counters;

    public EdgeMap()
    {
        counters = (byte*)NativeMemory.AllocZeroed(Size);
        Trace.SharedMem = counters;
    }

    /// <summary>How many branches were taken at all.</summary>
    public int Edges { get; private set; }

    /// <summary>Before an input is run.</summary>
    public void Clear()
    {
        new Span<byte>(counters, Size).Clear();
        Trace.PrevLocation = 0;
    }

    /// <summary>After it: whether it took a branch as none before, or twice as often and more.</summary>
    public bool Take()
    {
        var fresh = false;
        var words = new ReadOnlySpan<ulong>(counters, Size / sizeof(ulong));
        for (var w = 0; w < words.Length; w++)
        {
            if (words[w] == 0) continue;
            for (var i = w * sizeof(ulong); i < (w + 1) * sizeof(ulong); i++)
            {
                if (counters[i] == 0) continue;
                var bit = (byte)(1 << BitOperations.Log2(counters[i]));
                if ((seen[i] & bit) != 0) continue;
                if (seen[i] == 0) Edges++;
                seen[i] |= bit;
                fresh = true;
            }
        }
        return fresh;
    }

    public void Dispose()
    {
        // Instrumented code may still run on other threads: the counters are left to the end of the process.
        counters = null;
    }
}
