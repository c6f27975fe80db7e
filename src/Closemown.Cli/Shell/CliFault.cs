using System.Text.Json.Nodes;

namespace Closemown.Cli;

/// <summary>Why a command stops: what is wrong, what to do, and the exit code.</summary>
internal sealed class CliFault(int exit, string message, string remedy) : TypedFault(message, remedy)
{
    public int Exit { get; } = exit;

    /// <summary>What a program is answered that asked for JSON; null for the fault in the usual shape.</summary>
    public JsonObject? Json { get; init; }

    /// <summary>Something was refused, or not found.</summary>
    public static CliFault Refused(string message, string remedy) => new(ExitCodes.Refused, message, remedy);

    /// <summary>The command was typed wrongly.</summary>
    public static CliFault Usage(string message, string remedy) => new(ExitCodes.Usage, message, remedy);
}

/// <summary>What the exit code says.</summary>
internal static class ExitCodes
{
    public const int Done = 0;
    public const int Refused = 1;
    public const int Usage = 2;

    /// <summary>The program itself is at fault.</summary>
    public const int Bug = 70;

    public const int Interrupted = 130;

    public const string InWords = "0 done; 1 refused, not found, or a question not answered; 2 typed wrongly; 70 a fault of the program; 130 interrupted.";
}
