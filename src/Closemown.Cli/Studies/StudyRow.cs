using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Cli;

/// <summary>One reading of a gauge study, both sides.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Person">Who read; empty where nobody is named.</param>
/// <param name="LeftMm">At the left, mm.</param>
/// <param name="RightMm">At the right, mm.</param>
internal sealed record StudyRow(string Setting, string Person, double LeftMm, double RightMm)
{
    /// <summary>The readings of a study, in order; one that has a side alone is none.</summary>
    public static IReadOnlyList<StudyRow> Of(IEnumerable<Entry> entries, string study)
    {
        var rows = new List<StudyRow>();
        foreach (var e in entries)
        {
            if (!e.Is(GaugeEntry.Kind) || e[GaugeEntry.Study] != study || e[GaugeEntry.Setting] is not { } setting) continue;
            if (e[GaugeEntry.LeftMm] is { } left && e[GaugeEntry.RightMm] is { } right) rows.Add(new(setting, e.By ?? "", left, right));
        }
        return rows;
    }

    /// <summary>A side of a setting is one part of the study.</summary>
    public IEnumerable<StudyReading> Parts() => [new($"{Setting} {Stations.Left}", Person, LeftMm), new($"{Setting} {Stations.Right}", Person, RightMm)];
}
