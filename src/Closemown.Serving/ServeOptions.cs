using System.Text.Json;
using System.Text.Json.Serialization;

namespace Closemown.Serving;

/// <summary>How a server is started: what the command line has read, handed to the program that serves.</summary>
/// <remarks>Holds no secret: it is passed as a word of the command line, which other people at the machine can see.</remarks>
public sealed record ServeOptions
{
    /// <summary>The book: a full path, or ":memory:".</summary>
    public required string Book { get; init; }

    /// <summary>The folder for the authority, the devices and the keys of forms; null where the machine names none.</summary>
    public string? Folder { get; init; }

    /// <summary>The port on this machine, 0 to 65535; 0 takes a free one.</summary>
    public int Port { get; init; } = 5180;

    /// <summary>Open a browser when ready.</summary>
    public bool Open { get; init; }

    /// <summary>Serve devices on the local network as well.</summary>
    public bool Lan { get; init; }

    /// <summary>On the network without https.</summary>
    public bool PlainHttp { get; init; }

    /// <summary>Addresses on the network to serve at; empty for all private ones of this machine.</summary>
    public IReadOnlyList<string> Addresses { get; init; } = [];

    /// <summary>Write a line of JSON to standard error for each request.</summary>
    public bool Log { get; init; }

    /// <summary>Say where it is as one line of JSON.</summary>
    public bool Json { get; init; }

    /// <summary>Time goes by the book, a minute after its last entry, as the pipe has it: for invented books.</summary>
    public bool TimeOfTheBook { get; init; }

    /// <summary>Of a damaged book: answer from the entries before the damage, say so everywhere, and take none.</summary>
    public bool SoundPart { get; init; }

    /// <summary>How the person called the program: commands to type next are said that way.</summary>
    public string Called { get; init; } = "closemown";

    /// <summary>What a minute of the person's is worth, above 0, at most 100.</summary>
    public double PriceOfMinute { get; init; } = 1;

    /// <summary>Words of the trade: us or uk.</summary>
    public string Words { get; init; } = "us";

    /// <summary>Unit of the gap: um, thou or hundredth.</summary>
    public string Gap { get; init; } = "um";

    /// <summary>Unit of heights: mm, inch or fraction.</summary>
    public string Height { get; init; } = "mm";

    /// <summary>Decimal sign: point or comma.</summary>
    public string DecimalSign { get; init; } = "point";

    /// <summary>What is taken of a visitor.</summary>
    public ServeLimits Limits { get; init; } = new();

    /// <summary>As one word of a command line.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, ServeJson.Default.ServeOptions);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="JsonException">It is something else.</exception>
    public static ServeOptions Read(string json) => JsonSerializer.Deserialize(json, ServeJson.Default.ServeOptions) ?? throw new JsonException("No options.");
}

/// <summary>What is taken of a visitor.</summary>
public sealed record ServeLimits
{
    /// <summary>Bytes of one request's body, 1,000 to 1,000,000,000.</summary>
    public long RequestBytes { get; init; } = 4_000_000;

    /// <summary>Lines of entries in one request, 1 to 1,000,000.</summary>
    public int RequestLines { get; init; } = 2000;

    /// <summary>Pixels of a picture, 10,000 to 1,000,000,000; no picture is taken yet.</summary>
    public long RequestPixels { get; init; } = 24_000_000;

    /// <summary>Requests a second from one device, 1 to 100,000; twice as many may come at once.</summary>
    public int RequestsPerSecond { get; init; } = 50;
}

/// <summary>Reads and writes the options and the small files without looking at types while running.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = false)]
[JsonSerializable(typeof(ServeOptions))]
[JsonSerializable(typeof(DeviceFile))]
[JsonSerializable(typeof(PairingFile))]
internal sealed partial class ServeJson : JsonSerializerContext;
