using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Closemown.Serving;

/// <summary>What became of a code that a device gave.</summary>
public enum PairingOutcome
{
    /// <summary>It is the code; it cannot be used again.</summary>
    Right,

    /// <summary>It is not; more tries are left.</summary>
    Wrong,

    /// <summary>There is no code now: none was asked for, it was used, or it is too old.</summary>
    None,

    /// <summary>Too many wrong ones: a new code must be asked for at the machine.</summary>
    Locked,

    /// <summary>Too many wrong ones from this address: the code holds for others still.</summary>
    LockedHere,
}

/// <summary>The code with which one device is let in: asked for at the machine, eight digits, ten minutes, one use, four wrong tries an address and twenty in all.</summary>
/// <remarks>
/// Kept in <c>pairing.json</c> (mode 0600) as a salted SHA-256, so that the command that makes one and the server that checks it may be two processes. The digest
/// hides a code from a glance, not from one who may read the file: that is its owner, who may ask for a code anyway.
/// </remarks>
/// <param name="folder">The folder of the file.</param>
/// <param name="time">The clock.</param>
public sealed class PairingCode(string folder, TimeProvider time)
{
    /// <summary>How many digits a code has.</summary>
    public const int Digits = 8;

    /// <summary>Wrong tries, over all devices, after which no code is taken.</summary>
    public const int MostWrong = 20;

    /// <summary>Wrong tries from one address, after which none is taken from it: whoever guesses shuts themselves out before the others.</summary>
    public const int MostWrongAnAddress = 4;

    /// <summary>How long a code holds.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromMinutes(10);

    private readonly string path = Path.Combine(folder, "pairing.json");

    /// <summary>Makes a new code; the one before, and its wrong tries, are gone.</summary>
    public string Make() => PrivateFile.Alone(folder, () =>
    {
        var code = RandomNumberGenerator.GetInt32(0, 100_000_000).ToString("D8", CultureInfo.InvariantCulture);
        var salt = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        Keep(new PairingFile(salt, Digest(salt, code), time.GetUtcNow() + Life, 0, null));
        return code;
    });

    /// <summary>Tries a code; whatever is no digit in it is passed over.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="address">Where it comes from.</param>
    public PairingOutcome Try(string? typed, string address) => PrivateFile.Alone(folder, () =>
    {
        if (Read() is not { } held) return PairingOutcome.None;
        if (held.Wrong >= MostWrong) return PairingOutcome.Locked;
        if (time.GetUtcNow() >= held.ExpiresAt)
        {
            File.Delete(path);
            return PairingOutcome.None;
        }
        var wrongHere = held.WrongFrom?.GetValueOrDefault(address) ?? 0;
        if (wrongHere >= MostWrongAnAddress) return PairingOutcome.LockedHere;
        var digits = string.Concat((typed ?? "").Where(char.IsAsciiDigit).Take(Digits + 1));
        if (CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(Digest(held.Salt, digits)), Encoding.ASCII.GetBytes(held.Digest)))
        {
            File.Delete(path);
            return PairingOutcome.Right;
        }
        Keep(held with { Wrong = held.Wrong + 1, WrongFrom = new(held.WrongFrom ?? []) { [address] = wrongHere + 1 } });
        if (held.Wrong + 1 >= MostWrong) return PairingOutcome.Locked;
        return wrongHere + 1 >= MostWrongAnAddress ? PairingOutcome.LockedHere : PairingOutcome.Wrong;
    });

    /// <summary>Takes the code back.</summary>
    public void Drop() => PrivateFile.Alone(folder, () =>
    {
        File.Delete(path);
        return 0;
    });

    private PairingFile? Read()
    {
        try
        {
            return JsonSerializer.Deserialize(File.ReadAllBytes(path), ServeJson.Default.PairingFile);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or JsonException)
        {
            return null;
        }
    }

    private void Keep(PairingFile file) => PrivateFile.Write(path, JsonSerializer.SerializeToUtf8Bytes(file, ServeJson.Default.PairingFile));

    private static string Digest(string salt, string code) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(salt + code)));
}

/// <summary>What pairing.json holds.</summary>
/// <param name="Salt">Salt of the digest.</param>
/// <param name="Digest">SHA-256 of salt and code.</param>
/// <param name="ExpiresAt">When it ends.</param>
/// <param name="Wrong">Wrong tries in all.</param>
/// <param name="WrongFrom">Wrong tries by address; null for none.</param>
internal sealed record PairingFile(string Salt, string Digest, DateTimeOffset ExpiresAt, int Wrong, Dictionary<string, int>? WrongFrom);
