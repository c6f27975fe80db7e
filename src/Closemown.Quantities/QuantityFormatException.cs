namespace Closemown.Quantities;

/// <summary>The one exception that the <c>Parse</c> methods throw: what was typed cannot be read. <see cref="Fault"/> says where and
/// what to write.</summary>
public sealed class QuantityFormatException : FormatException
{
    /// <summary>Makes one without a spot in a text; the parsers never do this.</summary>
    public QuantityFormatException() : this(new ParseFault("", 0, 0, "This cannot be read.", "Write a number and its unit."))
    {
    }

    /// <summary>Makes one with a message alone; the parsers never do this.</summary>
    public QuantityFormatException(string message) : base(message) =>
        Fault = new ParseFault("", 0, 0, message, "Write a number and its unit.");

    /// <summary>Makes one with a message and a cause; the parsers never do this.</summary>
    public QuantityFormatException(string message, Exception innerException) : base(message, innerException) =>
        Fault = new ParseFault("", 0, 0, message, "Write a number and its unit.");

    /// <summary>Makes one from a fault.</summary>
    public QuantityFormatException(ParseFault fault) : base(fault?.ToString()) =>
        Fault = fault ?? throw new ArgumentNullException(nameof(fault));

    /// <summary>What is wrong, where, and what to write instead.</summary>
    public ParseFault Fault { get; }
}
