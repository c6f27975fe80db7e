namespace Closemown.Fuzzing;

/// <summary>Makes new inputs out of known ones, by chance from a seed.</summary>
/// <param name="random">The seeded source of chance.</param>
/// <param name="words">Pieces that mean something to the reader.</param>
/// <param name="longest">The longest input made, in bytes.</param>
public sealed class Mutator(Random random, IReadOnlyList<byte[]> words, int longest)
{
    private const int MostChanges = 6;

    /// <summary>One of the known inputs, changed in a few places.</summary>
    public byte[] Next(IReadOnlyList<byte[]> known)
    {
        var made = new List<byte>(known[random.Next(known.Count)]);
        for (var n = random.Next(1, MostChanges); n > 0; n--) Change(made, known);
        if (made.Count > longest) made.RemoveRange(longest, made.Count - longest);
        return [.. made];
    }

    private void Change(List<byte> made, IReadOnlyList<byte[]> known)
    {
        var at = random.Next(made.Count + 1);
        switch (random.Next(12))
        {
            case 0 when at < made.Count:
                made[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1 when at < made.Count:
                made[at] = (byte)random.Next(256);
                break;
            case 2:
                made.RemoveRange(at, Piece(made, at));
                break;
            case 3:
                made.InsertRange(at, made.GetRange(at, Piece(made, at)));
                break;
            case 4:
                Splice(made, at, known[random.Next(known.Count)]);
                break;
            case 5 when random.Next(20) == 0:
                Repeat(made, at);
                break;
            case 6 or 7:
                made.InsertRange(at, Word());
                break;
            case 8 or 9:
                Replace(made, at, IsOfNumber);
                break;
            default:
                Replace(made, at, IsOfWord);
                break;
        }
    }

    private byte[] Word() => words[random.Next(words.Count)];

    /// <summary>A length of what stands from a place on: mostly short.</summary>
    private int Piece(List<byte> made, int at) => Math.Min(made.Count - at, 1 + random.Next(random.Next(4) == 0 ? 64 : 8));

    private void Splice(List<byte> made, int at, byte[] other)
    {
        var from = random.Next(other.Length + 1);
        made.RemoveRange(at, made.Count - at);
        made.AddRange(other.AsSpan(from));
    }

    /// <summary>A piece so often that it comes to the limits of length.</summary>
    private void Repeat(List<byte> made, int at)
    {
        var piece = random.Next(2) == 0 ? Word() : [.. made.GetRange(at, Piece(made, at))];
        if (piece.Length == 0) return;
        var times = random.Next(1, Math.Max(2, longest / piece.Length));
        var all = new List<byte>(piece.Length * times);
        for (var n = 0; n < times; n++) all.AddRange(piece);
        made.InsertRange(at, all);
    }

    /// <summary>The run of signs at a place, where it is one of those meant, by a word.</summary>
    private void Replace(List<byte> made, int at, Func<byte, bool> meant)
    {
        while (at < made.Count && !meant(made[at])) at++;
        var (from, to) = (at, at);
        while (from > 0 && meant(made[from - 1])) from--;
        while (to < made.Count && meant(made[to])) to++;
        made.RemoveRange(from, to - from);
        made.InsertRange(from, Word());
    }

    private static bool IsOfNumber(byte b) => b is (>= (byte)'0' and <= (byte)'9') or (byte)'.' or (byte)'-' or (byte)'+';

    private static bool IsOfWord(byte b) => b is (>= (byte)'a' and <= (byte)'z') or (>= (byte)'A' and <= (byte)'Z') or (>= (byte)'0' and <= (byte)'9') or (byte)'-' or >= 128;
}
