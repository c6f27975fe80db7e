using Closemown.Advice;
using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>The bench as every strategy finds it: checks and actions, and the minutes they take, counted alike for all.</summary>
/// <remarks>It shows readings only, never the unit itself.</remarks>
internal sealed class BenchWork(CuttingUnit unit, Hand hand)
{
    private const double LookMinutes = 0.05;
    private const double ReassembleMinutes = 60;
    private static readonly AdviceSettings Costs = AdviceSettings.Default;
    private int laps;

    /// <summary>Minutes since the sitting began.</summary>
    public double Minutes { get; private set; }

    /// <summary>Whether anything was done in it.</summary>
    public bool Opened => Minutes > 0;

    public double Hours => unit.Hours;

    /// <summary>Whether the unit is the person's own, ground and just rebuilt when the season begins.</summary>
    public bool Own => unit.Make.Own;

    /// <summary>Told of everything done, in short words.</summary>
    public Action<string>? Did { get; set; }

    public void NewSitting() => (Minutes, laps) = (0, 0);

    public string Read(string check, int station)
    {
        Minutes += check == "swath" ? LookMinutes / 3 : Costs.CheckMinutes(check, 1);
        var word = hand.Read(check, station);
        Did?.Invoke($"{check} {Stations.All[station]} {word}");
        return word;
    }

    public string[] Read(string check) => [Read(check, 0), Read(check, 1), Read(check, 2)];

    public bool PaperCuts() => Read("paper-cut").All(w => w == "cuts");

    public void LookAtFit() => Minutes += Costs.FitMinutes;

    public void Turn(int left, int right)
    {
        if (left == 0 && right == 0) return;
        Did?.Invoke($"clicks {left} {right}");
        unit.BeginSpell();
        unit.Turn(0, left);
        unit.Turn(1, right);
        Minutes += Costs.ClicksMinutes + (Costs.ClickMinutes * (Math.Abs(left) + Math.Abs(right)));
    }

    public void Lap(double minutes)
    {
        Did?.Invoke($"lap {minutes}");
        unit.BeginSpell();
        unit.Lap(minutes);
        Minutes += minutes + (laps++ == 0 ? Costs.LapSetUpMinutes : Costs.LapAgainMinutes);
    }

    public void SquareUp()
    {
        unit.BeginSpell();
        unit.SquareUp();
        Minutes += Costs.SquareUpMinutes;
    }

    public void File()
    {
        unit.File();
        Minutes += Costs.StoneMinutes;
    }

    public void SendToGrind()
    {
        unit.BeginSpell();
        unit.Grind();
        Minutes += Costs.SentGrindMinutes;
    }

    public void Reassemble()
    {
        unit.BeginSpell();
        unit.Reassemble();
        Minutes += ReassembleMinutes;
    }
}
