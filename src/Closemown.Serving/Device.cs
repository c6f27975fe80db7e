namespace Closemown.Serving;

/// <summary>A device that was let in once with a pairing code.</summary>
/// <param name="Name">What the person called it; no two have the same.</param>
/// <param name="Token">SHA-256 of its token, 64 hexadecimal digits; the token itself only the device has.</param>
/// <param name="PairedAt">When it was let in.</param>
/// <param name="SeenAt">When it last came, to ten minutes.</param>
public sealed record Device(string Name, string Token, DateTimeOffset PairedAt, DateTimeOffset SeenAt);

/// <summary>What devices.json holds.</summary>
internal sealed record DeviceFile(IReadOnlyList<Device> Devices);
