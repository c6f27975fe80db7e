using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>What one sitting at the bench was made of, counted alike for every strategy.</summary>
/// <remarks>Readings of one check that follow each other are one step, unless the strategy says where its steps begin.</remarks>
internal sealed class SittingCount
{
    private readonly HashSet<(string Check, int Station)> read = [];     // since something was changed
    private string? going;

    public int Steps { get; private set; }

    /// <summary>Minutes of checks and turns.</summary>
    public double CheckMinutes { get; private set; }

    public double LapMinutes { get; private set; }

    /// <summary>Minutes of looking a mower over.</summary>
    public double FitMinutes { get; private set; }

    /// <summary>Minutes of everything else: filing, grinding, taking apart, squaring up.</summary>
    public double OtherMinutes { get; private set; }

    public double Minutes => CheckMinutes + LapMinutes + FitMinutes + OtherMinutes;

    /// <summary>Readings at a place where the same check was read before and nothing was changed since.</summary>
    public int Repeats { get; private set; }

    /// <summary>Whether the strategy itself said that the mower is to mow, and met no limit.</summary>
    public bool Mows { get; private set; }

    /// <summary>Whether an adjuster was turned, or it was lapped, ground or taken apart.</summary>
    public bool Changed { get; private set; }

    /// <summary>Whether nothing was changed, or the strip was fed at all three places since.</summary>
    public bool StripLast => !Changed || Enumerable.Range(0, Stations.All.Count).All(s => read.Contains(("paper-cut", s)));

    /// <summary>Whether nothing was changed, or both ends were felt since.</summary>
    public bool FeltLast => !Changed || (read.Contains(("contact", 0)) && read.Contains(("contact", 2)));

    /// <summary>Steps in which a heavy touch was felt and another step followed.</summary>
    public int Heavy { get; private set; }

    /// <summary>Those of them after which the very next step backed off there.</summary>
    public int BackedOff { get; private set; }

    /// <summary>What follows is a step of its own.</summary>
    public void NewStep() => going = null;

    public void Reads(string check, int station, double minutes)
    {
        if (going != check) Steps++;
        going = check;
        if (!read.Add((check, station))) Repeats++;
        CheckMinutes += minutes;
    }

    public void Turns(double minutes)
    {
        Change();
        CheckMinutes += minutes;
    }

    public void Laps(double minutes)
    {
        Change();
        LapMinutes += minutes;
    }

    public void LooksOver(double minutes)
    {
        Step();
        FitMinutes += minutes;
    }

    /// <summary>Any other work.</summary>
    public void Works(double minutes, bool changes)
    {
        if (changes) Change();
        else Step();
        OtherMinutes += minutes;
    }

    /// <summary>Money and a mower that is away, in minutes' worth: no minutes of the person's.</summary>
    public double Paid { get; private set; }

    public void Pays(double worth) => Paid += worth;

    public void Mow() => Mows = true;

    public void FeltHeavy(bool backedOff)
    {
        Heavy++;
        if (backedOff) BackedOff++;
    }

    private void Change()
    {
        Step();
        read.Clear();
        Changed = true;
    }

    private void Step()
    {
        Steps++;
        going = null;
    }
}
