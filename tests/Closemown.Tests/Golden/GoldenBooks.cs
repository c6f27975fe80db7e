using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Tests.Golden;

/// <summary>Invented books by number: the same number is the same book for ever. All kinds of entries come in them, as people would type them and now and then as they would not.</summary>
internal static class GoldenBooks
{
    /// <summary>What numbers are like: the field, least, greatest, step.</summary>
    private const string Numbers = """
        hours 0.3 1.5 0.1; minutes 0.5 4 0.5; um 60 100 5; gsm 60 90 5; leftMm 4 7 0.05;
        rightMm 4 7 0.05; leftTurns -0.5 0.5 0.125; rightTurns -0.5 0.5 0.125; mm 4 9 0.25; cutMm 4 6 0.1;
        benchMm 4 7 0.1; tMinC 2 12 0.5; tMaxC 13 26 0.5; rainMm 0 12 0.5; m2 50 400 50;
        lat 45 57 0.5; litres 2 20 1; kgM2 0.3 2 0.1; scalpPct 0 5 1; clipMm 3 8 0.5;
        lipMm 2 5 0.5; clickUm 10 30 1; blades 5 11 1; screwFlats 4 6 2; screwMmPerTurn 0.8 1.5 0.25;
        layers 1 2 1; stripUm 60 100 10; nGm2 0.5 3 0.5; grit 80 120 40; left -3 3 0.5;
        right -3 3 0.5; repeats 2 5 1; hour 7 19 1; sunHours 0 12 1; rhPct 40 95 5;
        windMs 0 8 0.5; minutesADay 30 90 30; noHeightChangeDays 1 5 1
        """;

    private static readonly Dictionary<string, double[]> Usual = Numbers.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(row => row.Split(' ')).ToDictionary(row => row[0], row => (double[])[.. row[1..].Select(x => double.Parse(x, CultureInfo.InvariantCulture))]);

    // How often a kind comes against the others; those that are not named come in one entry of seven.
    private const string Bench = "contact 12 paper-cut 14 paper-drag 4 clicks 14 lap 6 mow 10 swath 4 fit 4";
    private const string Height = "gauge 20 screw 18 mow 8 canopy 12 locked 4";
    private const string Turf = "mow 16 canopy 12 weather 20 look 8 water 6 feed 3 clippings 5 work 3";

    /// <summary>The lines of a book, in order of time, as they are said in a pipe.</summary>
    /// <param name="number">Its number, 0 or more: every fourth is of the bench, of the height, of the turf, of everything.</param>
    public static List<string> Lines(int number)
    {
        var random = new Random(7919 + number);
        var often = Weights((number % 4) switch { 0 => Bench, 1 => Height, 2 => Turf, _ => $"{Bench} {Height} {Turf}" });
        var at = new DateTimeOffset(2026, 1 + random.Next(12), 1 + random.Next(28), 8, 0, 0, TimeSpan.Zero);
        List<string> lines = [];
        void Add(JsonObject line, double hours)
        {
            at = at.AddMinutes(Math.Round(60 * hours));
            line["at"] = EntryTime.Write(at);
            var belongs = Kinds.Get((string)line["kind"]!).Belongs;
            if (belongs is Belongs.Unit or Belongs.UnitAndArea) line["unit"] = "mower";
            if (belongs is Belongs.Area or Belongs.UnitAndArea) line["area"] = "green";
            lines.Add(line.ToJsonString());
        }
        if (number % 4 != 0)
        {
            Add(new() { ["kind"] = "area", ["grass"] = "cool", ["lat"] = Any(random, "lat"), ["m2"] = Any(random, "m2") }, 0);
            Add(new() { ["kind"] = "wish", ["cutMm"] = Any(random, "cutMm"), ["weekdays"] = new JsonArray("tue", "thu", "sat") }, 0.1);
        }
        for (var n = 4 + random.Next(22); n > 0; n--) Add(Entry(Pick(random, often), random, at), number % 4 == 0 ? 0.1 + (random.Next(6) == 0 ? 50 : 0) : 0.2 + (30 * random.NextDouble()));
        return lines;
    }

    /// <summary>What each book is asked.</summary>
    public static IReadOnlyList<string> Questions { get; } =
    [
        """{"ask":"next"}""", """{"ask":"next","ahead":true,"atBench":true}""", """{"ask":"next","aim":{"benchMm":5.5}}""", """{"ask":"next","aim":{"cutMm":4.5,"area":"green"}}""",
        """{"ask":"steel"}""", """{"ask":"steel-history","last":20}""", """{"ask":"height","benchMm":5,"cutMm":4}""", """{"ask":"turf"}""", """{"ask":"plan","days":14}""", """{"ask":"step-down","cutMm":4}""",
        """{"ask":"canopy","back":7,"ahead":7}""", """{"ask":"sink"}""", """{"ask":"today"}""", """{"ask":"score"}""", """{"ask":"places"}""",
    ];

    private static List<(string Kind, int Weight)> Weights(string text)
    {
        var words = text.Split(' ');
        return [.. Enumerable.Range(0, words.Length / 2).Select(i => (words[2 * i], int.Parse(words[(2 * i) + 1], CultureInfo.InvariantCulture)))];
    }

    private static string Pick(Random random, List<(string Kind, int Weight)> often)
    {
        var named = often.Sum(p => p.Weight);
        var at = random.Next(named + (named / 6));
        if (at >= named)
        {
            List<KindSpec> rest = [.. Kinds.All.Where(k => k.Name is not ("void" or "inspect" or "photo"))];
            return rest[random.Next(rest.Count)].Name;
        }
        foreach (var (kind, weight) in often)
        {
            if ((at -= weight) < 0) return kind;
        }
        return "mow";
    }

    private static JsonObject Entry(string kind, Random random, DateTimeOffset at)
    {
        var spec = Kinds.Get(kind);
        var line = JsonNode.Parse(spec.Example)!.AsObject();
        foreach (var name in line.Select(p => p.Key).Where(k => k is not "kind").ToList())
        {
            if (spec.IndexOf(name) is >= 0 and var i) line[name] = Value(spec.Fields[i], random, at) ?? line[name]!.DeepClone();
            else line.Remove(name);
        }
        foreach (var field in spec.Fields.Where(_ => random.Next(6) == 0)) line[field.Name] ??= Value(field, random, at);
        foreach (var name in line.Where(p => p.Value is null).Select(p => p.Key).ToList()) line.Remove(name);
        return line;
    }

    private static JsonNode? Value(FieldSpec field, Random random, DateTimeOffset at) => field.Form switch
    {
        FieldForm.Word => field.Words[random.Next(field.Words.Count)],
        FieldForm.Flag => random.Next(2) == 0,
        FieldForm.Date => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps => Usual.ContainsKey(field.Name) ? Any(random, field.Name) : null,
        FieldForm.NumberOrNumbers => Usual.ContainsKey(field.Name) ? new JsonArray([.. Enumerable.Range(0, 1 + random.Next(5)).Select(_ => (JsonNode)Any(random, field.Name))]) : null,
        _ => null,
    };

    private static double Any(Random random, string name)
    {
        var (low, high, step) = (Usual[name][0], Usual[name][1], Usual[name][2]);
        return Math.Round(low + (step * random.Next((int)Math.Round((high - low) / step) + 1)), 3);
    }
}
