namespace Closemown.Serving;

/// <summary>Files that only their owner may read (mode 0600), replaced as a whole.</summary>
public static class PrivateFile
{
    private static readonly TimeSpan LockPatience = TimeSpan.FromSeconds(10);

    /// <summary>What mode the files have where the system knows modes.</summary>
    public const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Makes a folder that only its owner may look into; one that is there stays as it is.</summary>
    public static void MakeFolder(string folder)
    {
        if (Directory.Exists(folder)) return;
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, OwnerOnly | UnixFileMode.UserExecute);
    }

    /// <summary>Writes a file under its name only when it is whole.</summary>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        MakeFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
        var part = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            using (var file = Make(part)) file.Write(content);
            File.Move(part, path, overwrite: true);
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>Takes from a file what others may do with it, where a copy or a careless hand gave it.</summary>
    public static void Tighten(string path)
    {
        if (!OperatingSystem.IsWindows() && File.GetUnixFileMode(path) != OwnerOnly) File.SetUnixFileMode(path, OwnerOnly);
    }

    /// <summary>Does something while no other process does the like in the same folder.</summary>
    /// <exception cref="IOException">Another holds the folder for longer than ten seconds.</exception>
    public static T Alone<T>(string folder, Func<T> action)
    {
        ArgumentNullException.ThrowIfNull(action);
        MakeFolder(folder);
        using var held = Hold(Path.Combine(folder, "serving.lock"));
        return action();
    }

    private static FileStream Hold(string path)
    {
        var start = Environment.TickCount64;
        while (true)
        {
            try
            {
                // Not deleted afterwards: another may be waiting for this very file.
                return Open(path, FileMode.OpenOrCreate, FileShare.None);
            }
            catch (IOException) when (Environment.TickCount64 - start < LockPatience.TotalMilliseconds)
            {
                Thread.Sleep(15);
            }
        }
    }

    private static FileStream Make(string path) => Open(path, FileMode.CreateNew, FileShare.Read);

    private static FileStream Open(string path, FileMode mode, FileShare share)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = share };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerOnly;
        return new FileStream(path, options);
    }
}
