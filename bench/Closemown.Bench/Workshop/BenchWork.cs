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
    private double behind;                               // minutes of looking at the swath, which is no work at the bench

    /// <summary>What the sitting was made of so far.</summary>
    public SittingCount Count { get; private set; } = new();

    /// <summary>Minutes since the sitting began.</summary>
    public double Minutes => Count.Minutes + behind;

    /// <summary>Whether anything was done in it.</summary>
    public bool Opened => Minutes > 0;

    public double Hours => unit.Hours;

    /// <summary>Whether the unit is the person's own, ground and just rebuilt when the season begins.</summary>
    public bool Own => unit.Make.Own;

    /// <summary>Told of everything done, in short words.</summary>
    public Action<string>? Did { get; set; }

    public void NewSitting() => (Count, behind, laps) = (new(), 0, 0);

    public string Read(string check, int station)
    {
        if (check == "swath") behind += LookMinutes / 3;
        else Count.Reads(check, station, Costs.CheckMinutes(check, 1));
        var word = hand.Read(check, station);
        Did?.Invoke($"{check} {Stations.All[station]} {word}");
        return word;
    }

    public string[] Read(string check) => [Read(check, 0), Read(check, 1), Read(check, 2)];

    public bool PaperCuts() => Read("paper-cut").All(w => w == "cuts");

    public void LookAtFit() => Count.LooksOver(Costs.FitMinutes);

    public void Turn(int left, int right)
    {
        if (left == 0 && right == 0) return;
        Did?.Invoke($"clicks {left} {right}");
        unit.BeginSpell();
        unit.Turn(0, left);
        unit.Turn(1, right);
        Count.Turns(Costs.ClicksMinutes + (Costs.ClickMinutes * (Math.Abs(left) + Math.Abs(right))));
    }

    public void Lap(double minutes)
    {
        Did?.Invoke($"lap {minutes}");
        unit.BeginSpell();
        unit.Lap(minutes);
        Count.Laps(minutes + (laps++ == 0 ? Costs.LapSetUpMinutes : Costs.LapAgainMinutes));
    }

    public void SquareUp()
    {
        unit.BeginSpell();
        unit.SquareUp(hand.StripUm);
        Count.Works(Costs.SquareUpMinutes, changes: true);
    }

    public void File()
    {
        unit.File();
        Count.Works(Costs.StoneMinutes, changes: false);
    }

    public void SendToGrind()
    {
        unit.BeginSpell();
        unit.Grind();
        Count.Works(Costs.SentGrindMinutes, changes: true);
        Count.Pays(Costs.SentGrindWorth);
    }

    public void Reassemble()
    {
        unit.BeginSpell();
        unit.Reassemble();
        Count.Works(ReassembleMinutes, changes: true);
    }

    /// <summary>The knife's screws slackened and tightened again from the middle outwards.</summary>
    public void SetKnifeScrews(double minutes)
    {
        unit.BeginSpell();
        unit.SetKnifeScrews();
        Count.Works(minutes, changes: true);
    }

    /// <summary>How hollow a straightedge along the knife shows it, mm.</summary>
    public double Hollow(double minutes)
    {
        Count.Reads("straightedge", 1, minutes);
        return hand.HollowMm();
    }

    /// <summary>Another strip from now on.</summary>
    public void TakeStrip(double um) => hand.TakeStrip(um);

    public void SaysMow() => Count.Mow();
}
