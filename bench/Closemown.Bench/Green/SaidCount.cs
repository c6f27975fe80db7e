namespace Closemown.Bench.Green;

/// <summary>Numbers said with a spread, held to what came: how many lay within 90 in 100, how far off they were.</summary>
internal sealed class SaidCount
{
    private const double Z90 = 1.6448536;

    public int Count { get; private set; }

    public int Within { get; private set; }

    private double Sum { get; set; }

    private double Squares { get; set; }

    /// <summary>Mean of what was said less what came.</summary>
    public double Bias => Sum / Count;

    public double RootMeanSquare => Math.Sqrt(Squares / Count);

    public void Add((double Mean, double Sd) said, double came)
    {
        Count++;
        Sum += said.Mean - came;
        Squares += Math.Pow(said.Mean - came, 2);
        if (Math.Abs(came - said.Mean) <= Z90 * said.Sd) Within++;
    }

    /// <summary>Several together.</summary>
    public static SaidCount Of(IEnumerable<SaidCount> all)
    {
        var sum = new SaidCount();
        foreach (var c in all)
        {
            sum.Count += c.Count;
            sum.Within += c.Within;
            sum.Sum += c.Sum;
            sum.Squares += c.Squares;
        }
        return sum;
    }
}
