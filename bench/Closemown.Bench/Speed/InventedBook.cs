using System.Globalization;
using Closemown.Entries;

namespace Closemown.Bench.Speed;

/// <summary>A book of any length about one unit that never was: mown, looked at, turned and lapped, by a seeded and very simple simulation.</summary>
/// <remarks>For timing only. Two entries of five move the chain a step, as in the demo book. Lengths in µm.</remarks>
internal sealed class InventedBook
{
    private const string Unit = "unit";
    private static readonly (double Left, double Right)[] Weights = [(0.91, 0.09), (0.5, 0.5), (0.09, 0.91)];
    private readonly Random chance;
    private readonly List<Entry> entries;
    private readonly int count;
    private readonly double[] end = [45, 60];
    private readonly double[] edge = [12, 10, 14];
    private DateTimeOffset at = new(2020, 3, 1, 8, 0, 0, TimeSpan.Zero);

    private InventedBook(int count, int seed) => (this.count, chance, entries) = (count, new Random(seed), new(count));

    /// <summary>The first <paramref name="count"/> entries; a longer book with the same seed begins with them.</summary>
    public static IReadOnlyList<Entry> Of(int count, int seed = 7)
    {
        var book = new InventedBook(count, seed);
        book.Write("\"kind\":\"unit\",\"blades\":10");
        book.Write("\"kind\":\"strip\",\"um\":80,\"sdUm\":4");
        while (book.entries.Count < count) book.Outing();
        return book.entries;
    }

    private void Outing()
    {
        at = at.AddHours(40);
        if (chance.NextDouble() < 0.6) Read("contact", [0, 2], s => Gap(s) - 6, 4.5, -12, 4, "heavy light none");
        if (chance.NextDouble() < 0.2) Read("paper-cut", [0, 2], s => Gap(s) + edge[s], 6.5, 36, 56, "cuts nicks folds");
        if (chance.NextDouble() < 0.1) Read("torch", [0, 1, 2], s => edge[s], 5, 8, 20, "none thin wide");
        int[] clicks = [Clicks(end[0]), Clicks(end[1])];
        if (clicks[0] != 0 || clicks[1] != 0)
        {
            for (var side = 0; side < 2; side++) end[side] -= (clicks[side] * 18) + Normal(1.5 * Math.Abs(clicks[side]));
            Write($"\"kind\":\"clicks\",\"left\":{clicks[0]},\"right\":{clicks[1]}");
            Read("contact", [0, 2], s => Gap(s) - 6, 4.5, -12, 4, "heavy light none");
        }
        if (edge.Max() > 18)
        {
            for (var s = 0; s < 3; s++) edge[s] = 3 + ((edge[s] - 3) / 3);
            for (var side = 0; side < 2; side++) end[side] += 6;
            Write("\"kind\":\"lap\",\"minutes\":2,\"grit\":120");
        }
        for (var side = 0; side < 2; side++) end[side] += 5 + Normal(1.5);
        for (var s = 0; s < 3; s++) edge[s] += 1.3 + Math.Abs(Normal(0.6));
        Write("\"kind\":\"mow\",\"hours\":1.1");
        Read("swath", [0, 1, 2], s => Gap(s) + edge[s], 10, 45, 80, "clean ragged uncut");
    }

    private static int Clicks(double gap) => (int)Math.Truncate((gap - 10) / 14);

    private double Gap(int s) => (Weights[s].Left * end[0]) + (Weights[s].Right * end[1]);

    private void Read(string kind, int[] at, Func<int, double> sees, double scatter, double low, double high, string words)
    {
        var told = at.Select(s =>
        {
            var x = sees(s) + Normal(scatter);
            return $"\"{Stations.All[s]}\":\"{words.Split(' ')[x < low ? 0 : x < high ? 1 : 2]}\"";
        });
        Write($"\"kind\":\"{kind}\",{string.Join(',', told)}");
    }

    private void Write(string fields)
    {
        at = at.AddMinutes(2);
        if (entries.Count == count) return;
        var id = Guid.CreateVersion7(at);
        var line = $"{{\"v\":1,\"id\":\"{id}\",\"at\":\"{at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)}\",\"unit\":\"{Unit}\",{fields}}}";
        var faults = EntryReader.Read(line, EntryContext.Whole, out var entry);
        entries.Add(entry ?? throw new InvalidOperationException($"{line}\n{faults[0]}"));
    }

    private double Normal(double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
