namespace Closemown.Cli;

/// <summary>Questions to a person at a terminal.</summary>
internal static class Asking
{
    /// <summary>Asks and reads a line; null where nobody can be asked, as at a pipe or for a program.</summary>
    public static Func<string, string?>? Of(Call call)
    {
        if (!call.Screen.CanAsk || call.Json) return null;
        StreamReader? lines = null;
        return question =>
        {
            call.Screen.Out.Write(question);
            call.Screen.Out.Flush();
            lines ??= new StreamReader(call.Around.Input());
            return lines.ReadLine();
        };
    }
}
