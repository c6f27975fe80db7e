namespace Closemown.Bench.Green;

/// <summary>Twelve values of a year, each that of the middle of its month, with straight lines between.</summary>
internal sealed class MonthTable(params double[] months)
{
    private const double DaysAMonth = 365.25 / 12;

    public double On(int dayOfYear)
    {
        var at = (dayOfYear / DaysAMonth) - 0.5 + 12;
        var m = (int)at;
        var (a, b) = (months[m % 12], months[(m + 1) % 12]);
        return a + ((at - m) * (b - a));
    }
}
