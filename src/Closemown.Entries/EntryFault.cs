namespace Closemown.Entries;

/// <summary>The codes a fault can carry; fixed by the contract.</summary>
public static class FaultCodes
{
    public const string BadJson = "bad-json";
    public const string UnknownKind = "unknown-kind";
    public const string Missing = "missing";
    public const string BadValue = "bad-value";
    public const string Implausible = "implausible";
    public const string Conflict = "conflict";
    public const string UnknownId = "unknown-id";
    public const string UnknownQuestion = "unknown-question";
}

/// <summary>Why a line was not taken, and what to do about it.</summary>
/// <param name="Code">One of <see cref="FaultCodes"/>.</param>
/// <param name="Field">The field it concerns, empty where it concerns the whole line.</param>
/// <param name="Message">What is wrong, with the value that was given.</param>
/// <param name="Remedy">What the person or program should write instead.</param>
public sealed record EntryFault(string Code, string Field, string Message, string Remedy)
{
    public override string ToString() => $"{(Field.Length > 0 ? Field + ": " : "")}{Message} {Remedy}";
}
