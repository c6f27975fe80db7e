using System.Globalization;
using System.Text.Json.Nodes;

namespace Closemown.Cli;

/// <summary>How often what was said came true.</summary>
internal sealed class ScoreCommand : CliCommand
{
    public ScoreCommand() : base("score", "how often what was said of the next reading came true, and how much each person's readings scatter")
    {
        Examples = [("closemown score", "of what was said with 50, 75 and 90 in 100, how much came true"), ("closemown score --json", "for a program")];
    }

    public override int Do(Call call)
    {
        using var open = call.Read();
        var answer = open.Ask(new JsonObject { ["ask"] = "score" });
        if (call.Json)
        {
            call.Answer(answer);
            return ExitCodes.Done;
        }
        JsonArray said = answer["score"]!["said"]!.AsArray(), heights = answer["score"]!["height"]!.AsArray();
        foreach (var line in Wrap.Text((string)answer["score"]!["what"]!, call.Screen.Width)) call.Screen.Line(line);
        call.Screen.Line();
        if (said.Concat(heights).Sum(r => (int)r!["readings"]!) == 0)
        {
            call.Screen.Line("No reading is in the book yet: add some, and ask again.");
            return ExitCodes.Done;
        }
        call.Screen.Line("said, in 100      readings   on average   came true");
        foreach (var row in said)
        {
            var n = (int)row!["readings"]!;
            var (mean, share) = n == 0 ? ("–", "–") : (InHundred((double)row["saidOnAverage"]!), InHundred((double)row["share"]!));
            call.Screen.Line($"about {(int)row["inHundred"]!,-12}{n,8}{mean,13}{share,12}");
        }
        call.Screen.Line();
        if (heights.Sum(r => (int)r!["readings"]!) > 0)
        {
            foreach (var line in Wrap.Text((string)answer["score"]!["whatHeight"]!, call.Screen.Width)) call.Screen.Line(line);
            call.Screen.Line();
            call.Screen.Line("said, in 100      readings   came true");
            foreach (var row in heights) call.Screen.Line($"{(int)row!["inHundred"]!,-18}{(int)row["readings"]!,8}{InHundred((double)row["share"]!),12}");
            call.Screen.Line();
        }
        var figures = new GapText(call.Style);
        foreach (var unit in open.Desk.Units)
        {
            foreach (var person in open.Desk.Track(unit).People.Where(p => p.Readings > 0))
            {
                var who = person.By.Length > 0 ? person.By : "whoever reads";
                foreach (var line in Wrap.Text($"{unit}: the readings of {who} scatter {figures.Decimals(person.Mean, 1)} times (give or take {figures.Decimals(person.Sd, 1)}) as much as is usual, from {person.Readings} readings.", call.Screen.Width)) call.Screen.Line(line);
            }
        }
        return ExitCodes.Done;
    }

    private static string InHundred(double share) => (100 * share).ToString("0", CultureInfo.InvariantCulture);
}
