namespace Closemown.Cli;

/// <summary>A name in a command that is printed to be typed.</summary>
internal static class CommandWord
{
    /// <summary>The name as it is, or in quotes where a shell would take it for something else.</summary>
    public static string Of(string name)
    {
        if (name.Length > 0 && name.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.') && name[0] != '-') return name;
        return name.AsSpan().ContainsAny("\"$`\\!") ? $"'{name.Replace("'", "'\\''", StringComparison.Ordinal)}'" : $"\"{name}\"";
    }
}
