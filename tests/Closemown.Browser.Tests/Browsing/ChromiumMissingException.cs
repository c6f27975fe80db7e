namespace Closemown.Browser.Tests;

/// <summary>There is no Chromium; the message says what to do about it.</summary>
public sealed class ChromiumMissingException : Exception
{
    public ChromiumMissingException()
    {
    }

    public ChromiumMissingException(string message) : base(message)
    {
    }

    public ChromiumMissingException(string message, Exception innerException) : base(message, innerException)
    {
    }
}
