using Closemown.Advice;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>All that stands behind an advice.</summary>
internal sealed class WhyText(Screen screen, Phrasing words, WritingStyle style)
{
    public IEnumerable<string> Lines(StepAdvice advice, Desk desk)
    {
        var step = new StepText(screen, words, style);
        foreach (var line in step.Now(advice.Step)) yield return line;
        foreach (var line in step.Sure(advice.Step).SelectMany(s => Wrap.Text(s, screen.Width))) yield return line;
        foreach (var line in List("Because", advice.Step.Why.Concat(advice.Figures).Select(words.Say))) yield return line;
        var entries = advice.Entries.Select(id => desk.Arrived.FirstOrDefault(e => e.Id == id)).OfType<Entry>().OrderBy(e => e.At).ToList();
        foreach (var line in List("It rests most on these entries", entries.Select(e => $"{EntryWords.When(e.At)}  {EntryWords.Short(e, style)}"))) yield return line;
        foreach (var line in List("Rules", advice.Rules.Select(r => $"{words.Say(r.Text)} [{r.Id}; {r.Source}]"))) yield return line;
        foreach (var line in Alternatives(advice)) yield return line;
        foreach (var line in List("It would change if", advice.WouldChange.Select(w => $"{words.Say(w.Reading)} ({Chances.InHundred(w.Probability)}): then {words.Say(w.To)}"))) yield return line;
        foreach (var line in List("Cautions", advice.Step.Cautions.Select(words.Say))) yield return line;
        foreach (var line in List("Then", advice.Step.Then.Select(t => words.Say(t.Say)))) yield return line;
        yield return "";
        yield return $"This advice: {advice.Id}";
        yield return $"Not done as said? closemown add decline {advice.Id}";
    }

    private IEnumerable<string> Alternatives(StepAdvice advice)
    {
        var gap = new GapText(style);
        var actions = advice.Alternatives.Where(a => a.ExpectedLoss is not null).ToList();
        if (actions.Count > 0)
        {
            foreach (var line in List("What else could be done, and what it is expected to cost, in minutes", actions.Select(a => $"{gap.Decimals(a.ExpectedLoss!.Value, 1),6}  {words.Say(a.Say)}"))) yield return line;
        }
        var checks = advice.Alternatives.Where(a => a.Saves is not null).ToList();
        if (checks.Count > 0)
        {
            foreach (var line in List("Checks, and what each is expected to save, in minutes (for minutes of yours)", checks.Select(a => $"{gap.Decimals(a.Saves!.Value, 1),6}  {words.Say(a.Say)} ({gap.Decimals(a.Step.TakesMinutes, 1)})"))) yield return line;
        }
    }

    private IEnumerable<string> List(string title, IEnumerable<string> items)
    {
        var any = false;
        foreach (var item in items)
        {
            if (!any)
            {
                yield return "";
                foreach (var line in Wrap.Text(title, screen.Width)) yield return screen.Ink(Tone.Strong, line);
            }
            any = true;
            var lead = item.Length - item.TrimStart().Length;
            foreach (var line in Wrap.Beside("  - " + new string(' ', lead), item.TrimStart(), screen.Width, 4 + lead)) yield return line;
        }
    }
}
