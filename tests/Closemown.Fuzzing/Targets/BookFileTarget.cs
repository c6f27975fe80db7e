using System.Buffers.Binary;
using Closemown.Book;

namespace Closemown.Fuzzing;

/// <summary>A book's file with some bytes changed: each eight bytes of input are a place, a length and what is written there.</summary>
internal sealed class BookFileTarget() : FuzzTarget("book-file")
{
    private const int Step = 8;
    private const int MostChanges = 12;
    private static readonly Lazy<byte[]> Whole = new(Make);

    public override IReadOnlyList<byte[]> Seeds { get; } = [.. Enumerable.Range(0, 64).Select(n => Change(n * 997, 1, (ushort)(n * 31))), .. Enumerable.Range(0, 32).Select(n => Change(n * 512, 512, 0))];

    public override int Longest => Step * MostChanges;

    public override int Weight => 2;

    public override void Run(byte[] input)
    {
        var folder = Directory.CreateTempSubdirectory("closemown-fuzz-").FullName;
        try
        {
            var file = Path.Combine(folder, "book.closemown");
            File.WriteAllBytes(file, Changed(input));
            Try(() => Verification.Run(file));
            Try(() => Salvage.Read(file));
            foreach (var readOnly in (bool[])[true, false]) Try(() => Read(file, readOnly));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Read(string file, bool readOnly)
    {
        using var book = BookFile.Open(file, new BookOptions { ReadOnly = readOnly, Create = false, WaitSeconds = 1 });
        foreach (var stored in book.ReadAll()) Laws.OneLine(stored.Entry.Json);
        book.ReadWeather();
        book.ReadWeatherKept();
        book.HashAt(book.Count);
    }

    private static void Try(Action read)
    {
        try
        {
            read();
        }
        catch (BookException fault)
        {
            Laws.Told(fault.Message, fault.Remedy);
        }
    }

    private static byte[] Changed(byte[] input)
    {
        var file = (byte[])Whole.Value.Clone();
        for (var at = 0; at + Step <= input.Length && at < Step * MostChanges; at += Step)
        {
            var change = input.AsSpan(at, Step);
            var from = (int)(BinaryPrimitives.ReadUInt32LittleEndian(change) % (uint)file.Length);
            var length = Math.Min(file.Length - from, 1 + (BinaryPrimitives.ReadUInt16LittleEndian(change[4..]) % 1024));
            // Zeros, as a lost sector has them, or the byte with some bits turned.
            if (length > 1) file.AsSpan(from, length).Fill(change[6]);
            else file[from] ^= change[6];
        }
        return file;
    }

    private static byte[] Change(int from, int length, ushort with)
    {
        var change = new byte[Step];
        BinaryPrimitives.WriteUInt32LittleEndian(change, (uint)from);
        BinaryPrimitives.WriteUInt16LittleEndian(change.AsSpan(4), (ushort)(length - 1));
        BinaryPrimitives.WriteUInt16LittleEndian(change.AsSpan(6), with);
        return change;
    }

    private static byte[] Make()
    {
        var folder = Directory.CreateTempSubdirectory("closemown-fuzz-").FullName;
        try
        {
            var file = Path.Combine(folder, "book.closemown");
            using (var book = BookFile.Open(file))
            {
                var report = Importer.Read(new StringReader(string.Join('\n', GoodLines.Whole)), book);
                Laws.Must(report.Added > 0, "the good lines are taken", report.ToString());
            }
            return File.ReadAllBytes(file);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
