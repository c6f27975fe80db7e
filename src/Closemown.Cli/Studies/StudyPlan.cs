using Closemown.Height;

namespace Closemown.Cli;

/// <summary>The reading of a gauge study that comes next.</summary>
/// <param name="Setting">The setting it belongs to.</param>
/// <param name="SettingNumber">Which setting that is, from 1.</param>
/// <param name="Person">Who reads; empty where nobody is named.</param>
/// <param name="Trial">Which reading of theirs at that setting, from 1.</param>
/// <param name="Turned">Whether the screws have to be turned first.</param>
internal sealed record StudyTurn(string Setting, int SettingNumber, string Person, int Trial, bool Turned);

/// <summary>What a gauge study still wants: each setting read equally often by each person before the screws are turned, as a setting never comes back exactly.</summary>
internal sealed class StudyPlan
{
    private readonly ILookup<(string Setting, string Person), StudyRow> cells;

    /// <param name="rows">What was read, in order.</param>
    /// <param name="joining">Persons who read too, besides those who have.</param>
    /// <param name="settings">Settings wanted.</param>
    /// <param name="trials">Readings wanted of each setting by each person.</param>
    public StudyPlan(IReadOnlyList<StudyRow> rows, IEnumerable<string> joining, int settings, int trials)
    {
        (Rows, Wanted, Trials) = (rows, settings, trials);
        Settings = [.. rows.Select(r => r.Setting).Distinct()];
        Persons = [.. rows.Select(r => r.Person).Concat(joining).Distinct()];
        if (Persons.Count == 0) Persons = [""];
        cells = rows.ToLookup(r => (r.Setting, r.Person));
    }

    public IReadOnlyList<StudyRow> Rows { get; }

    /// <summary>Settings read so far, in order.</summary>
    public IReadOnlyList<string> Settings { get; }

    public IReadOnlyList<string> Persons { get; }

    /// <summary>Settings wanted.</summary>
    public int Wanted { get; }

    /// <summary>Readings wanted of each setting by each person.</summary>
    public int Trials { get; }

    /// <summary>The next reading; null where none is wanted any more. Persons take turns, so that nobody remembers their own last number.</summary>
    public StudyTurn? Next()
    {
        if (Settings.Count > 0)
        {
            // Only the last setting is filled up: an earlier one is gone, as the screws were turned.
            var last = Settings[^1];
            var person = Persons.MinBy(p => Read(last, p))!;
            if (Read(last, person) < Trials) return new(last, Settings.Count, person, Read(last, person) + 1, Turned: false);
        }
        var whole = Settings.Count(s => Persons.All(p => Read(s, p) >= Trials));
        return whole < Wanted ? new(Label(), Settings.Count + 1, Persons[0], 1, Turned: Settings.Count > 0) : null;
    }

    /// <summary>The readings that can be analysed: the settings that every person read the same number of times, at least twice, so that as many as possible count.</summary>
    public IReadOnlyList<StudyReading> Counted()
    {
        int Least(string setting) => Persons.Min(p => Read(setting, p));
        var most = Settings.Select(Least).DefaultIfEmpty(0).Max();
        if (most < 2) return [];
        var best = Enumerable.Range(2, most - 1).MaxBy(t => t * Settings.Count(s => Least(s) >= t));
        return [.. Settings.Where(s => Least(s) >= best).SelectMany(s => Persons.SelectMany(p => cells[(s, p)].Take(best))).SelectMany(r => r.Parts())];
    }

    private int Read(string setting, string person) => cells[(setting, person)].Count();

    private string Label()
    {
        var n = Settings.Count + 1;
        while (Settings.Contains(Name(n))) n++;
        return Name(n);
    }

    private static string Name(int n) => n.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
