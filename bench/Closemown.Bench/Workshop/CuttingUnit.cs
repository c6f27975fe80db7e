namespace Closemown.Bench.Workshop;

/// <summary>A cutting unit with physics of its own, not the estimator's: dead band, run-out, wear by pressing, laps that bite by the gap.</summary>
/// <remarks>Three streams of chance (unit, wear, readings), so that two strategies live through the same season. Lengths in µm. All invented.</remarks>
internal sealed class CuttingUnit
{
    private static readonly (double Left, double Right)[] Weights = [(0.9107, 0.0893), (0.5, 0.5), (0.0893, 0.9107)];
    private readonly Random wear;
    private readonly Random hand;
    private readonly double[] end;
    private readonly double[] edge;
    private readonly double[] opening;
    private readonly double[] deadBand;
    private readonly double[] slack;
    private readonly double bow, click, runOut, dulling, lapOpening, halfLife, strip, paperShift;

    public CuttingUnit(int seed, double hours)
    {
        var made = new Random((seed * 7) + 1);
        (wear, hand) = (new Random((seed * 7) + 2), new Random((seed * 7) + 3));
        Hours = hours;
        var (open, tilt) = (made.NextDouble() * 100 + 10, Normal(made, 0, 15));
        end = [open + tilt, open - tilt];
        edge = [.. Enumerable.Range(0, 3).Select(_ => Math.Max(2, Normal(made, 14, 6)))];
        bow = Normal(made, 0, 6);
        click = Math.Max(10, Normal(made, 18.5, 2));
        opening = [.. Enumerable.Range(0, 2).Select(_ => Math.Max(0.3, 3 * Math.Exp(Normal(made, 0, 0.5))))];
        deadBand = [.. Enumerable.Range(0, 2).Select(_ => Math.Max(0, Normal(made, 5, 3)))];
        slack = [.. deadBand.Select(d => made.NextDouble() * d)];
        (runOut, dulling) = (Math.Max(1, Normal(made, 6, 3)), Math.Max(0.3, Normal(made, 1.2, 0.4)));
        (lapOpening, halfLife) = (Math.Max(1, Normal(made, 5, 1.5)), 1 + (2 * made.NextDouble()));
        (strip, paperShift) = (80 + Normal(made, 0, 4), Normal(made, 0, 5));
    }

    public double Hours { get; }

    /// <summary>Minutes lapped so far: the steel used.</summary>
    public double Lapped { get; private set; }

    public double Gap(int s) => (Weights[s].Left * end[0]) + (Weights[s].Right * end[1]) + (s == 1 ? bow : 0);

    public double Edge(int s) => edge[s];

    public void Turn(int side, double clicks)
    {
        if (clicks == 0) return;
        var move = (clicks * click) + Normal(wear, 0, Math.Sqrt(Math.Abs(clicks)));
        var taken = move > 0 ? Math.Min(deadBand[side] - slack[side], move) : Math.Max(-slack[side], move);
        slack[side] += taken;
        end[side] -= move - taken;
    }

    public void Lap(double minutes)
    {
        Lapped += minutes;
        for (var s = 0; s < 3; s++) edge[s] = 3 + ((edge[s] - 3) * Math.Pow(0.5, minutes * Bite(Gap(s)) / halfLife)) + Math.Abs(Normal(wear, 0, 0.5));
        var bites = end.Select(Bite).ToArray();
        for (var side = 0; side < 2; side++) end[side] += lapOpening * minutes * bites[side] * (0.8 + (0.4 * wear.NextDouble()));
    }

    /// <summary>Both ends brought to the same drag, come in from outside.</summary>
    public void SquareUp()
    {
        for (var side = 0; side < 2; side++) (end[side], slack[side]) = (strip + Normal(wear, 0, 5), deadBand[side]);
    }

    public void File()
    {
        for (var s = 0; s < 3; s++) edge[s] = (edge[s] + 3) / 2;
    }

    public void Grind()
    {
        for (var side = 0; side < 2; side++) end[side] = 60;
        for (var s = 0; s < 3; s++) edge[s] = 2;
    }

    public void Mow()
    {
        const int Parts = 4;
        var h = Hours / Parts;
        for (var part = 0; part < Parts; part++)
        {
            for (var side = 0; side < 2; side++) end[side] += (opening[side] * h) + (0.4 / Parts) + Normal(wear, 0, 1.3 * Math.Sqrt(h)) + (Math.Max(0, -end[side]) * 0.4 * h);
            for (var s = 0; s < 3; s++) edge[s] += (dulling * h) + (Math.Max(0, -Gap(s)) * 0.1 * h) + Math.Abs(Normal(wear, 0, 0.2));
        }
    }

    public string Read(string check, int s)
    {
        var (x, low, high, words) = check switch
        {
            "paper-cut" => (Gap(s) + edge[s] + paperShift + Normal(hand, 0, 6), 0.45 * strip, 0.7 * strip, "cuts nicks folds"),
            "paper-drag" => (Gap(s) + Normal(hand, 0, 6), strip - 8, strip + 8, "tight slight loose"),
            "contact" => (Gap(s) - runOut + Normal(hand, 0, 4.5), -12, 4, "heavy light none"),
            "torch" => (edge[s] + Normal(hand, 0, 5), 8, 20, "none thin wide"),
            "swath" => (Gap(s) + edge[s] + Normal(hand, 0, 10), 45.0, 80, "clean ragged uncut"),
            _ => throw new ArgumentOutOfRangeException(nameof(check), check, "not a check"),
        };
        return words.Split(' ')[x < low ? 0 : x < high ? 1 : 2];
    }

    private static double Bite(double gap) => 1 / (1 + Math.Exp((gap - 22) / 6));

    private static double Normal(Random r, double mean, double sd) => mean + (sd * Math.Sqrt(-2 * Math.Log(1 - r.NextDouble())) * Math.Cos(2 * Math.PI * r.NextDouble()));
}
