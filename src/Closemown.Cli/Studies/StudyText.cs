using System.Globalization;
using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>A gauge study told to a person: its table, what it means for a setting, and the next reading.</summary>
/// <param name="plan">The study.</param>
/// <param name="smallestMoveMm">What the smallest turn worth making moves, mm.</param>
/// <param name="style">The person's way of writing.</param>
internal sealed class StudyText(StudyPlan plan, double smallestMoveMm, WritingStyle style)
{
    private const int Name = 34;
    private readonly HeightFigures figures = new(style);

    /// <summary>The table, or that it takes more readings.</summary>
    public IEnumerable<string> Table()
    {
        var counted = plan.Counted();
        if (counted.Count == 0)
        {
            yield return $"{Count(plan.Rows.Count, "reading")} so far. The table comes once a setting was read twice by everyone.";
            yield break;
        }
        var s = GaugeStudy.Of(counted);
        yield return $"{Count(s.Parts / 2, "setting")}, two sides each, {Count(s.Persons, "person")}, {s.Trials} readings of each";
        yield return "".PadRight(Name) + $"{"sd, " + figures.Unit,9}{"% of TV",9}";
        string Row(string name, double mm) => $"{name,-Name}{Fine(mm),9}{(s.Tv > 0 ? (100 * mm / s.Tv).ToString("F0", CultureInfo.InvariantCulture) : "-"),9}";
        yield return Row("EV   repeatability", s.Ev);
        yield return s.Persons > 1 ? Row("AV   reproducibility (persons)", s.Av) : $"{"AV   reproducibility (persons)",-Name}{"one person",9}";
        if (s.Interaction > 0) yield return Row("     person and setting together", s.Interaction);
        yield return Row("GRR  the whole gauge", s.Grr);
        yield return Row(s.Parts > 2 ? "PV   what the settings differ in" : "PV   what left and right differ in", s.Pv);
        yield return Row("TV   everything", s.Tv);
        var unused = (2 * plan.Rows.Count) - counted.Count;
        if (unused > 0) yield return $"Not in it yet: {Count(unused, "number")} of settings that not everyone read as often.";
    }

    /// <summary>What the table means here.</summary>
    public IEnumerable<string> Meaning()
    {
        var counted = plan.Counted();
        if (counted.Count == 0) yield break;
        var s = GaugeStudy.Of(counted);
        var freedom = s.Parts * s.Persons * (s.Trials - 1);
        if (s.Ev == 0)
        {
            yield return "Every repeat was alike, so the gauge's own step hides its scatter: read a finer division, or take EV as half a step.";
            yield break;
        }
        // Relative spread of a standard deviation of normal errors: 1/sqrt(2 nu).
        yield return $"EV rests on {Count(freedom, "repeat")}: it may well be {Math.Round(100 / Math.Sqrt(2 * freedom)).ToString(CultureInfo.InvariantCulture)} in 100 off.";
        string Within(double av) => string.Join(", ", new[] { 1, 2, 3 }.Select(n => $"{Fine(HonestTolerance.Mm(s.Ev, n, smallestMoveMm: smallestMoveMm, avMm: av))}"));
        yield return $"With 1, 2, 3 readings a side both sides can honestly be said to be within {Within(0)} {figures.Unit}, 85 times in 100, by the reading of one person.";
        if (s.Persons > 1 && s.Av + s.Interaction == 0) yield return "Persons do not differ by more than their own scatter.";
        else if (s.Persons > 1) yield return $"Where another person's reading has to agree: within {Within(Math.Sqrt((s.Av * s.Av) + (s.Interaction * s.Interaction)))} {figures.Unit}.";
        yield return $"%GRR is {s.PercentGrr.ToString("F0", CultureInfo.InvariantCulture)} here. It depends on how far apart the settings were; for setting a height look at what is said above.";
    }

    /// <summary>What to read next.</summary>
    public IEnumerable<string> Next()
    {
        if (plan.Next() is not { } next)
        {
            yield return "The study is complete. Its readings teach how much the gauge scatters and move no height: read once more the usual way, closemown add gauge LEFT RIGHT.";
            yield break;
        }
        yield return Say(next);
    }

    /// <summary>The instruction for one reading.</summary>
    public string Say(StudyTurn next)
    {
        var who = next.Person.Length > 0 ? $"{next.Person}, " : plan.Persons.Count > 1 ? "you, " : "";
        var before = next.Turned ? $"Turn both screws by about half a turn and tighten the nuts (closemown add screw, closemown add locked keep the record). "
            : next is { SettingNumber: 1, Trial: 1 } ? "Tighten the nuts and leave the screws alone. " : "";
        return $"{before}Setting {(next.Setting == Text(next.SettingNumber) ? "" : $"\"{next.Setting}\", ")}{next.SettingNumber} of {Math.Max(plan.Wanted, next.SettingNumber)}, {who}reading {next.Trial} of {plan.Trials}: "
            + "take the gauge off, put it back, and read left and right without looking at the numbers before.";
    }

    private static string Text(int n) => n.ToString(CultureInfo.InvariantCulture);

    private string Fine(double mm) => style.Height == Quantities.HeightUnit.Mm ? figures.Decimals(mm, 3) : figures.Decimals(mm / 25.4, 4);

    private static string Count(int n, string what) => $"{Text(n)} {what}{(n == 1 ? "" : "s")}";
}
