using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Bench.Workshop.Strategies;
using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>One reading written down as its opposite: is the next step the same again after three true readings more?</summary>
internal static class Flips
{
    private const int ReadAgain = 3;
    private const int Afresh = 1000;                     // readings that nobody made in the season itself
    private const int MostTries = 200;
    private static readonly HashSet<string> Kinds = ["contact", "paper-cut", "paper-drag", "torch"];
    private static readonly (int From, int To)[] Pools = [(1, 1), (2, 5), (6, 15), (16, int.MaxValue)];

    /// <summary>Arguments: those of the workshop, --trials T (40), --per-season K (4) trials in one season, --show.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (trials, per, mowings, c, set) = (o.Whole("--trials", 40), o.Whole("--per-season", 4), o.Whole("--mowings", 16), o.Circumstances(), o.Settings);
        var first = o.Whole("--first", 1);
        var found = new Trial?[trials];
        Parallel.For(0, (trials + per - 1) / per, new ParallelOptions { MaxDegreeOfParallelism = o.Jobs }, season =>
        {
            var seed = first + season;
            var record = new Recorded();
            Season.Of(seed, c, mowings, u => new Guided(set, u.Make.Own), set, record);
            for (var t = season * per; t < Math.Min(trials, (season + 1) * per); t++) found[t] = Try(record, seed, t, c, set);
        });
        var done = found.OfType<Trial>().ToArray();
        Console.WriteLine("one reading flipped, then three true ones: is the next step the one without the flip?");
        Console.WriteLine("beside it: the same, any check as good as another; whether it is the step of a book without that reading; and how often those two books agree, the most that could be hoped for");
        Console.WriteLine();
        var lines = new List<string[]> { (string[])["trials", "number", "same step", "checks as one", "as if left out", "left out against read"], Row("all", done) };
        foreach (var kind in Kinds) lines.Add(Row(kind, [.. done.Where(t => t.Kind == kind)]));
        foreach (var (from, to) in Pools) lines.Add(Row(to == int.MaxValue ? $"from mowing {from}" : $"mowings {from}–{to}", [.. done.Where(t => t.Mowing >= from && t.Mowing <= to)]));
        Table.Write(lines);
        if (!o.Has("--show")) return 0;
        foreach (var t in done.Where(t => !t.Same)) Console.WriteLine(t.Shown);
        return 0;
    }

    private static string[] Row(string name, Trial[] t) => [name, t.Length.ToString(CultureInfo.InvariantCulture), Share(t, x => x.Same), Share(t, x => x.SameTurn), Share(t, x => x.AsLeftOut), Share(t, x => x.SameWithout)];

    private static string Share(Trial[] trials, Func<Trial, bool> held)
    {
        var bySeason = trials.GroupBy(t => t.Seed).ToArray();
        return OverUnits.Ratio([.. bySeason.Select(g => (double)g.Count(held))], [.. bySeason.Select(g => (double)g.Count())]).Text("0.000");
    }

    private static Trial? Try(Recorded record, int seed, int trial, Circumstances c, AdviceSettings set)
    {
        var r = Chance.Stream(seed, Chance.Of.Trials, trial);
        for (var i = 0; i < MostTries; i++)
        {
            var at = record.Entries[r.Next(record.Entries.Count)];
            var sitting = record.Entries.Where(e => e.Mowing == at.Mowing && e.Line <= at.Line).SelectMany(Ends).ToArray();
            if (sitting.Length > 0) return Flip(record, at, sitting[r.Next(sitting.Length)], seed, c, set);
        }
        return null;
    }

    private static IEnumerable<(RecordedEntry Entry, int Station)> Ends(RecordedEntry e) =>
        Kinds.Contains(e.Kind) ? Enumerable.Range(0, 3).Where(s => Word(e, s) is { } w && w != Hand.Words(e.Kind)[1]).Select(s => (e, s)) : [];

    private static string? Word(RecordedEntry e, int s) => (string?)e.Body[Stations.All[s]];

    private static Trial Flip(Recorded record, RecordedEntry at, (RecordedEntry Entry, int Station) chosen, int seed, Circumstances c, AdviceSettings set)
    {
        var (entry, s) = chosen;
        var words = Hand.Words(entry.Kind);
        var (was, now) = (Word(entry, s)!, Word(entry, s) == words[0] ? words[2] : words[0]);
        var wrong = entry.Body.DeepClone();
        wrong[Stations.All[s]] = now;
        var lines = record.Lines.Take(at.Line).ToList();
        var right = new Talk(set, begun: lines);
        lines[entry.Line - 1] = wrong.ToJsonString();
        var flipped = new Talk(set, begun: lines);
        var less = entry.Body.DeepClone().AsObject();
        less.Remove(Stations.All[s]);
        if (Enumerable.Range(0, 3).Any(other => less.ContainsKey(Stations.All[other]))) lines[entry.Line - 1] = less.ToJsonString();
        else lines.RemoveAt(entry.Line - 1);
        var without = new Talk(set, begun: lines);
        var hand = new Hand(at.Unit, c);
        var again = new List<string>();
        var time = DateTimeOffset.Parse((string)at.Body["at"]!, CultureInfo.InvariantCulture);
        for (var k = 1; k <= ReadAgain; k++)
        {
            var word = hand.Read(entry.Kind, s, Afresh + k);
            var line = new JsonObject { ["kind"] = entry.Kind, ["unit"] = "unit", ["at"] = time.AddMinutes(k).ToString("o", CultureInfo.InvariantCulture), [Stations.All[s]] = word }.ToJsonString();
            right.Write(line);
            flipped.Write(line);
            without.Write(line);
            again.Add(word);
        }
        var (a, b, left) = (right.Next(atBench: true), flipped.Next(atBench: true), without.Next(atBench: true));
        return new(seed, entry.Kind, at.Mowing, Same(a, b), Same(a, b) || (IsCheck(a) && IsCheck(b)), Same(b, left), Same(a, left), $"""
            unit {seed}, mowing {at.Mowing}, entry {at.Line}: {entry.Kind} {Stations.All[s]} of entry {entry.Line} {was} → {now}, then {string.Join(' ', again)}; truth {StepText.Truth(at.Unit)}
              as read:  {StepText.Of(a)}   {StepText.Belief(right.Steel())}
              flipped:  {StepText.Of(b)}   {StepText.Belief(flipped.Steel())}
              left out: {StepText.Of(left)}   {StepText.Belief(without.Steel())}
            """);
    }

    private static bool Same(JsonNode a, JsonNode b) =>
        (string)a["do"]! == (string)b["do"]! && ((int?)a["left"] ?? 0) == ((int?)b["left"] ?? 0) && ((int?)a["right"] ?? 0) == ((int?)b["right"] ?? 0);

    private static bool IsCheck(JsonNode step) => Kinds.Contains((string)step["do"]!);

    private sealed record Trial(int Seed, string Kind, int Mowing, bool Same, bool SameTurn, bool AsLeftOut, bool SameWithout, string Shown);

    /// <param name="Line">Entries in the book with this one.</param>
    /// <param name="Mowing">The mowing it came before.</param>
    /// <param name="Body">The entry.</param>
    /// <param name="Unit">The unit as it was then.</param>
    private sealed record RecordedEntry(int Line, int Mowing, JsonObject Body, CuttingUnit Unit)
    {
        public string Kind => (string)Body["kind"]!;
    }

    /// <summary>A season with every entry at the bench kept, and the unit as it was then.</summary>
    private sealed class Recorded : ISeasonWatch
    {
        private Guided? guided;

        public List<RecordedEntry> Entries { get; } = [];

        public IReadOnlyList<string> Lines => guided!.Book.Lines;

        public void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy)
        {
            guided = (Guided)strategy;
            guided.Wrote = (entry, step) =>
            {
                if (step is not null) Entries.Add(new(guided.Book.Lines.Count, unit.Outings + 1, entry, unit.Copy()));
            };
        }

        public void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said)
        {
        }

        public void AfterMowing(Outing outing)
        {
        }
    }
}
