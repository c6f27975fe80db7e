namespace Closemown.Bench.Green;

/// <summary>The height wished on each day: 5 mm; in half of the seasons 6 mm at first and, told on day 20, 5 mm by day 60.</summary>
internal sealed class GreenWish(GreenMake make, DateOnly first)
{
    public const double HighMm = 6, LowMm = 5;

    /// <summary>Days of the season on which the lower wish is told and due.</summary>
    public const int ToldOn = 20, DueOn = 60;

    public double StartMm => make.StepsDown ? HighMm : LowMm;

    public double Mm(int day) => make.StepsDown && day < ToldOn ? HighMm : LowMm;

    public DateOnly? By(int day) => make.StepsDown && day >= ToldOn ? first.AddDays(DueOn) : null;

    /// <summary>The band: until the lower wish is due, both heights are in it.</summary>
    public (double Low, double High) Band(int day)
    {
        var high = make.StepsDown && day < DueOn ? HighMm : LowMm;
        return (Mm(day) - 0.5, 1.5 * high);
    }

    public IReadOnlyList<DateOnly> Fixtures { get; } = make.HasFixtures ? [first.AddDays(45), first.AddDays(96), first.AddDays(131)] : [];
}
