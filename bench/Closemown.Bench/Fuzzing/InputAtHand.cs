using System.IO.MemoryMappedFiles;

namespace Closemown.Bench.Fuzzing;

/// <summary>The input being read, in a file that outlives the process; and an end to what takes too long.</summary>
internal sealed class InputAtHand : IDisposable
{
    private const int Room = 1 << 20;
    private const int TooLongSeconds = 30;
    private readonly MemoryMappedFile file;
    private readonly MemoryMappedViewAccessor view;
    private readonly Timer watchdog;
    private long since;

    public InputAtHand(string folder, string target)
    {
        file = MemoryMappedFile.CreateFromFile(Place(folder, target), FileMode.Create, null, Room);
        view = file.CreateViewAccessor();
        watchdog = new Timer(_ => Look(), null, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(1));
    }

    /// <summary>Writes the input down before it is run.</summary>
    public void Take(byte[] input)
    {
        var length = Math.Min(input.Length, Room - sizeof(int));
        view.Write(0, length);
        view.WriteArray(sizeof(int), input, 0, length);
        Volatile.Write(ref since, Environment.TickCount64);
    }

    /// <summary>It was run.</summary>
    public void Done() => Volatile.Write(ref since, 0);

    /// <summary>What a process that has ended was reading.</summary>
    public static byte[] Left(string folder, string target)
    {
        var bytes = File.ReadAllBytes(Place(folder, target));
        return bytes.AsSpan(sizeof(int), Math.Clamp(BitConverter.ToInt32(bytes), 0, bytes.Length - sizeof(int))).ToArray();
    }

    public void Dispose()
    {
        watchdog.Dispose();
        view.Dispose();
        file.Dispose();
    }

    private void Look()
    {
        if (Volatile.Read(ref since) is > 0 and var begun && Environment.TickCount64 - begun > TooLongSeconds * 1000)
            Environment.FailFast($"One input took longer than {TooLongSeconds} s.");
    }

    private static string Place(string folder, string target)
    {
        Directory.CreateDirectory(folder);
        return Path.Combine(folder, $"at-hand-{target}");
    }
}
