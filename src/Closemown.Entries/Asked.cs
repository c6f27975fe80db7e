namespace Closemown.Entries;

/// <summary>What a value that comes in is held against: the limits of input, and the ranges that are asked about.</summary>
/// <param name="Confirmed">The fields that the person stands by; null where nobody is asked about implausible values.</param>
internal sealed record Asked(IReadOnlyList<string>? Confirmed)
{
    /// <summary>Whether an implausible value of a field is asked about.</summary>
    public bool Asks(string field) => Confirmed is not null && !Confirmed.Contains(field);
}
