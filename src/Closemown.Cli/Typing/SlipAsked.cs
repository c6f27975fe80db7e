using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Questions values that look wrong: at a terminal the person picks, elsewhere they are refused.</summary>
internal static class SlipAsked
{
    /// <summary>Goes through the doubtful numbers of an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="screen">Where to ask.</param>
    /// <param name="ask">Reads an answer; null where nobody can be asked.</param>
    /// <param name="confirmAs">How a field is named to confirm it.</param>
    public static void Settle(TypedEntry entry, Screen screen, Func<string, string?>? ask, Func<FieldSpec, string> confirmAs)
    {
        foreach (var (field, typed, question) in entry.Doubtful().ToList())
        {
            if (ask is null) throw Refusal(field, typed, question, confirmAs(field));
            Pick(entry, screen, ask, field, typed, question);
        }
    }

    private static CliFault Refusal(FieldSpec field, TypedValue typed, SlipQuestion question, string name)
    {
        var offers = question.Candidates.Select(c => $"Did you mean {c.Written}? ({c.Reading})");
        var stay = $"Correct it, or if {typed.Keep ?? typed.Json.ToJsonString()} is right as it is, repeat with --confirm {name}.";
        var remedy = string.Join('\n', offers.Append(stay));
        return new CliFault(ExitCodes.Refused, $"{field.Name} is doubtful and was not kept. {question.Why}", remedy)
        {
            Json = Pipe.Conversation.Refused([new(FaultCodes.Implausible, field.Name, question.Why, string.Join(' ', offers.Append(stay)))]),
        };
    }

    private static void Pick(TypedEntry entry, Screen screen, Func<string, string?> ask, FieldSpec field, TypedValue typed, SlipQuestion question)
    {
        foreach (var line in Wrap.Text(question.Why, screen.Width)) screen.Line(line);
        for (var i = 0; i < question.Candidates.Count; i++) screen.Line($"  {i + 1}  {question.Candidates[i].Written}: {question.Candidates[i].Reading}");
        screen.Line($"  k  keep {typed.Keep ?? typed.Json.ToJsonString()}: it is right");
        screen.Line("  -  leave it out");
        while (true)
        {
            var answer = ask("Which? ")?.Trim() ?? "-";
            if (answer is "k" or "keep") entry.Confirm(field.Name);
            else if (answer is "-" or "") entry.Drop(field.Name);
            else if (int.TryParse(answer, out var n) && n >= 1 && n <= question.Candidates.Count) entry.Correct(field.Name, Math.Round(question.Candidates[n - 1].Value, 6), typed.Keep ?? typed.Json.ToJsonString());
            else continue;
            return;
        }
    }
}
