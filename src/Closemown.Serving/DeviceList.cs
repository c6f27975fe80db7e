using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Closemown.Serving;

/// <summary>The paired devices, kept in <c>devices.json</c>. Read anew each time it is asked, so that a device revoked by another process is out at once.</summary>
/// <param name="folder">The folder of the file.</param>
/// <param name="time">The clock.</param>
public sealed class DeviceList(string folder, TimeProvider time)
{
    /// <summary>The longest name kept, in characters.</summary>
    public const int LongestName = 40;

    /// <summary>The most devices kept.</summary>
    public const int Most = 100;

    private const int TokenBytes = 32;
    private static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(10);
    private readonly string path = Path.Combine(folder, "devices.json");

    /// <summary>All of them, in the order they came.</summary>
    /// <exception cref="IOException">The file is there and cannot be read: then nobody is let in.</exception>
    public IReadOnlyList<Device> All()
    {
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return [];
        }
        try
        {
            return JsonSerializer.Deserialize(bytes, ServeJson.Default.DeviceFile)?.Devices ?? [];
        }
        catch (JsonException e)
        {
            throw new IOException($"{path} cannot be read as a list of devices; move it away and pair anew", e);
        }
    }

    /// <summary>Lets a device in.</summary>
    /// <param name="name">What to call it; made plain, shortened, and numbered where it is taken.</param>
    /// <returns>The device, and the token that it alone has: 64 hexadecimal digits of 256 random bits.</returns>
    /// <exception cref="InvalidOperationException">There are as many as may be.</exception>
    public (Device Device, string Token) Add(string? name) => PrivateFile.Alone(folder, () =>
    {
        var known = All();
        if (known.Count >= Most) throw new InvalidOperationException($"{Most} devices are paired already; revoke some first.");
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes));
        var now = time.GetUtcNow();
        var device = new Device(Free(Plain(name), known), Digest(token), now, now);
        Keep([.. known, device]);
        return (device, token);
    });

    /// <summary>The device that has a token; null where none has.</summary>
    public Device? Find(string? token)
    {
        if (token is not { Length: TokenBytes * 2 }) return null;
        var digest = Encoding.ASCII.GetBytes(Digest(token));
        Device? found = null;
        foreach (var device in All())
        {
            if (CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(device.Token), digest)) found = device;
        }
        return found;
    }

    /// <summary>Whether a device is still among them.</summary>
    /// <exception cref="IOException">The file is there and cannot be read.</exception>
    public bool Has(Device device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return All().Any(d => d.Token == device.Token);
    }

    /// <summary>Notes that a device came, at most every ten minutes.</summary>
    public void Saw(Device device)
    {
        ArgumentNullException.ThrowIfNull(device);
        var now = time.GetUtcNow();
        if (now - device.SeenAt < SeenEvery) return;
        PrivateFile.Alone(folder, () =>
        {
            var known = All();
            // One that was revoked meanwhile stays out.
            if (known.Any(d => d.Token == device.Token)) Keep([.. known.Select(d => d.Token == device.Token ? d with { SeenAt = now } : d)]);
            return 0;
        });
    }

    /// <summary>Takes a device out by its name, whatever its case.</summary>
    /// <returns>Whether there was one.</returns>
    public bool Revoke(string name) => PrivateFile.Alone(folder, () =>
    {
        var known = All();
        var rest = known.Where(d => !d.Name.Equals(name, StringComparison.OrdinalIgnoreCase)).ToList();
        if (rest.Count == known.Count) return false;
        Keep(rest);
        return true;
    });

    /// <summary>Takes all out.</summary>
    /// <returns>How many there were.</returns>
    public int RevokeAll() => PrivateFile.Alone(folder, () =>
    {
        var count = All().Count;
        Keep([]);
        return count;
    });

    private void Keep(IReadOnlyList<Device> devices) => PrivateFile.Write(path, JsonSerializer.SerializeToUtf8Bytes(new DeviceFile(devices), ServeJson.Default.DeviceFile));

    private static string Digest(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(token)));

    private static string Plain(string? name)
    {
        var kept = new StringBuilder();
        foreach (var rune in (name ?? "").Trim().EnumerateRunes())
        {
            // Nothing that could move a terminal's cursor or hide in a list.
            var plain = Rune.IsLetterOrDigit(rune) || rune.Value is ' ' or '-' or '_' or '.' or '\'';
            if (plain && kept.Length + rune.Utf16SequenceLength <= LongestName) kept.Append(rune);
        }
        var text = kept.ToString().Trim();
        // "all" means all of them to the command that revokes.
        return text.Length == 0 || text.Equals("all", StringComparison.OrdinalIgnoreCase) ? "device" : text;
    }

    private static string Free(string name, IReadOnlyList<Device> known)
    {
        bool Taken(string n) => known.Any(d => d.Name.Equals(n, StringComparison.OrdinalIgnoreCase));
        if (!Taken(name)) return name;
        for (var n = 2; ; n++)
        {
            if (!Taken($"{name} {n}")) return $"{name} {n}";
        }
    }
}
