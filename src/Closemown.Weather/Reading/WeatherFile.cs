using System.IO.Compression;
using System.Text;

namespace Closemown.Weather;

/// <summary>What a person says about a file that it does not say itself.</summary>
public sealed record WeatherFileOptions
{
    /// <summary>Columns by field: a header, or a header and a unit after a colon.</summary>
    public IReadOnlyDictionary<string, string> Columns { get; init; } = new Dictionary<string, string>();

    /// <summary>Order of dates with slashes: <c>ymd</c>, <c>dmy</c> or <c>mdy</c>; null where it need not be told.</summary>
    public string? Dates { get; init; }

    /// <summary>Units of a daily summary: <c>metric</c>, <c>standard</c> (inch, °F) or <c>tenths</c>; null where not told.</summary>
    public string? Units { get; init; }

    /// <summary>Which place of a file of several, counted from 1; null where there is one.</summary>
    public int? Place { get; init; }
}

/// <summary>A weather file as read.</summary>
/// <param name="Layout">What it was recognised as.</param>
/// <param name="Source">A name for its source.</param>
/// <param name="Days">Its days.</param>
/// <param name="Attribution">Whose data it is, where a licence wants that said; else null.</param>
/// <param name="Placed">Whether the layout itself says which day a value is of, so that nothing is to be moved for a morning reader.</param>
public sealed record WeatherFileRead(string Layout, string Source, WeatherTable Days, string? Attribution = null, bool Placed = false);

/// <summary>Reads a weather file, recognised by what is in it.</summary>
public static class WeatherFile
{
    private const int HeadBytes = 8192;

    /// <summary>Reads a file; gzip is unpacked.</summary>
    /// <exception cref="WeatherException">It cannot be read; says what to do.</exception>
    public static WeatherFileRead Read(Stream file, WeatherFileOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        options ??= new();
        using var buffered = new BufferedStream(file, 1 << 16);
        var first = buffered.ReadByte();
        var second = buffered.ReadByte();
        if (first == 'P' && second == 'K') throw new WeatherException("The file is a zip archive.", "Unpack it and name the file inside: of the German weather service that is produkt_klima_tag_….txt.");
        using var whole = new Prefixed([.. new[] { first, second }.Where(b => b >= 0).Select(b => (byte)b)], buffered);
        using Stream plain = first == 0x1F && second == 0x8B ? new GZipStream(whole, CompressionMode.Decompress) : whole;
        var head = new byte[HeadBytes];
        var read = plain.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        if (read == 0) throw new WeatherException("The file is empty.", "Export it again.");
        using var again = new Prefixed(head[..read], plain);
        using var text = new StreamReader(again, Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        using var beginning = new StreamReader(new MemoryStream(head, 0, read), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        return Recognised(beginning.ReadToEnd(), text, options);
    }

    private static WeatherFileRead Recognised(string beginning, TextReader text, WeatherFileOptions options)
    {
        var head = beginning.TrimStart('\uFEFF', ' ', '\r', '\n', '\t');
        if (head.StartsWith('<')) throw new WeatherException("The file is a web page, not weather.", "The place it was fetched from may have wanted a login: export it again.");
        var lines = head.Split('\n', 3);
        var first = lines[0].Trim();
        if (head[..Math.Min(1, head.Length)] is "{" or "[") return new("Open-Meteo JSON", "open-meteo", OpenMeteoJson.Read(text.ReadToEnd(), options.Place), Licences.OpenMeteo, Placed: true);
        if (first.StartsWith("latitude,longitude", StringComparison.OrdinalIgnoreCase) || first.StartsWith("location_id,", StringComparison.OrdinalIgnoreCase))
            return new("Open-Meteo CSV", "open-meteo", OpenMeteoCsv.Read(text, options.Place), Licences.OpenMeteo, Placed: true);
        if (GhcnByElement.Is(first) || (lines.Length > 1 && GhcnByElement.Is(lines[1].Trim()))) return new("GHCN-Daily, one element a row", "ghcn-daily", GhcnByElement.Read(text));
        if (MidasDaily.Is(first)) return new("MIDAS Open, daily", "midas", MidasDaily.Read(text), Licences.Midas, Placed: true);
        if (options.Columns.Count == 0 && GhcnByDay.Is(first)) return new("GHCN-Daily, one day a row", "ghcn-daily", GhcnByDay.Read(text, options.Units));
        if (options.Columns.Count == 0 && Gsod.Is(first)) return new("Global summary of the day", "gsod", Gsod.Read(text), Placed: true);
        if (options.Columns.Count == 0 && DwdDaily.Is(first)) return new("DWD daily values", "dwd", DwdDaily.Read(text), Licences.Dwd, Placed: true);
        return new("columns by name", "file", NamedColumns.Read(beginning, text, options));
    }

    /// <summary>Bytes read already, then the rest.</summary>
    private sealed class Prefixed(byte[] prefix, Stream rest) : Stream
    {
        private int at;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            if (at >= prefix.Length) return rest.Read(buffer);
            var n = Math.Min(buffer.Length, prefix.Length - at);
            prefix.AsSpan(at, n).CopyTo(buffer);
            at += n;
            return n;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
