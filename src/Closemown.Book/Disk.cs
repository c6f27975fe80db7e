using System.Runtime.InteropServices;

namespace Closemown.Book;

/// <summary>Flushes files, and folders, so that the new name of a file outlives a power cut as the file does.</summary>
/// <remarks>fsync(2): flushing a file "does not necessarily ensure that the entry in the directory containing the file has also reached disk. For that an explicit fsync() on a file descriptor for the directory is also needed."</remarks>
internal static class Disk
{
    public static void Flush(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
    }

    /// <summary>Flushes the folder that a file lies in; left out on Windows, where a folder cannot be opened for it.</summary>
    public static void FlushFolderOf(string file)
    {
        if (OperatingSystem.IsWindows()) return;
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var handle = Native.Open(folder, 0);
        if (handle < 0) throw Failed(folder);
        try
        {
            // Some network file systems do not know this call for folders (EINVAL): nothing more can be done there.
            if (Native.Sync(handle) != 0 && Marshal.GetLastPInvokeError() != 22) throw Failed(folder);
        }
        finally
        {
            _ = Native.Close(handle);
        }
    }

    private static IOException Failed(string folder) => new($"the folder {folder} cannot be flushed to the disk: {Marshal.GetLastPInvokeErrorMessage()}");

    private static class Native
    {
        [DllImport("libc", EntryPoint = "open", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

        [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Sync(int handle);

        [DllImport("libc", EntryPoint = "close", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Close(int handle);
    }
}
