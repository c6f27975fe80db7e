using Closemown.Entries;

namespace Closemown.Height;

/// <summary>One reading of a gauge study.</summary>
/// <param name="Part">What was read: a setting and a side.</param>
/// <param name="Person">Who read it.</param>
/// <param name="Mm">The reading, mm.</param>
public readonly record struct StudyReading(string Part, string Person, double Mm);

/// <summary>Repeatability and reproducibility of the gauge, by analysis of variance; all spreads are standard deviations in the readings' unit.</summary>
/// <remarks>
/// Source: AIAG, Measurement Systems Analysis, analysis-of-variance method: two crossed random effects, person and part; their interaction is pooled into the
/// repeatability where it is not significant (here at 0.25, from memory). Components that come out negative are taken as 0.
/// </remarks>
public sealed record GaugeStudy
{
    private const double PoolAbove = 0.25;

    public required int Parts { get; init; }

    public required int Persons { get; init; }

    /// <summary>Readings of each part by each person.</summary>
    public required int Trials { get; init; }

    /// <summary>EV, repeatability: the same person, the same part, again.</summary>
    public required double Ev { get; init; }

    /// <summary>AV, reproducibility: what persons differ in; with one person it cannot be seen and is 0.</summary>
    public required double Av { get; init; }

    /// <summary>Interaction of person and part; 0 where it was pooled.</summary>
    public required double Interaction { get; init; }

    /// <summary>PV: what the parts really differ in.</summary>
    public required double Pv { get; init; }

    /// <summary>Probability of an interaction at least so large where there is none; 1 with one person.</summary>
    public required double InteractionP { get; init; }

    /// <summary>GRR, the whole gauge: √(EV² + AV² + interaction²).</summary>
    public double Grr => Math.Sqrt((Ev * Ev) + (Av * Av) + (Interaction * Interaction));

    /// <summary>TV, everything: √(GRR² + PV²).</summary>
    public double Tv => Math.Sqrt((Grr * Grr) + (Pv * Pv));

    /// <summary>100·GRR/TV.</summary>
    public double PercentGrr => 100 * Grr / Tv;

    /// <summary>Analyses a study.</summary>
    /// <exception cref="ArgumentException">Fewer than two parts; a part was not read by each person equally often, or only once: the message names what to read again.</exception>
    public static GaugeStudy Of(IEnumerable<StudyReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var all = readings.ToList();
        var parts = all.Select(r => r.Part).Distinct().ToList();
        var persons = all.Select(r => r.Person).Distinct().ToList();
        if (parts.Count < 2) throw new ArgumentException("A study needs two settings at least: turn the screws and read again.", nameof(readings));
        var cells = all.ToLookup(r => (r.Part, r.Person), r => r.Mm);
        var t = cells[(parts[0], persons[0])].Count();
        foreach (var part in parts)
        {
            foreach (var person in persons)
            {
                var count = cells[(part, person)].Count();
                if (count < 2) throw new ArgumentException($"\"{part}\" was read {count} times by \"{person}\": each setting must be read twice at least by each person.", nameof(readings));
                if (count != t) throw new ArgumentException($"\"{part}\" was read {count} times by \"{person}\", others {t} times: read it as often as the others.", nameof(readings));
            }
        }
        int n = parts.Count, k = persons.Count;
        var mean = all.Average(r => r.Mm);
        double Squares(Func<StudyReading, object> key) => all.GroupBy(key).Sum(g => g.Count() * Math.Pow(g.Average(r => r.Mm) - mean, 2));
        double ssPart = Squares(r => r.Part), ssPerson = Squares(r => r.Person), ssCell = Squares(r => (r.Part, r.Person));
        double ssError = cells.Sum(c => { var m = c.Average(); return c.Sum(v => (v - m) * (v - m)); }), ssBoth = Math.Max(0, ssCell - ssPart - ssPerson);
        double msPart = ssPart / (n - 1), msError = ssError / (n * k * (t - 1));
        if (k == 1) return Result(Math.Sqrt(msError), 0, 0, (msPart - msError) / t, 1);
        double freedom = (n - 1) * (k - 1), msPerson = ssPerson / (k - 1), msBoth = ssBoth / freedom;
        var p = IncompleteBeta.FAbove(msBoth / msError, freedom, n * k * (t - 1));
        if (p <= PoolAbove) return Result(Math.Sqrt(msError), (msPerson - msBoth) / (n * t), (msBoth - msError) / t, (msPart - msBoth) / (k * t), p);
        var pooled = (ssError + ssBoth) / ((n * k * (t - 1)) + freedom);
        return Result(Math.Sqrt(pooled), (msPerson - pooled) / (n * t), 0, (msPart - pooled) / (k * t), p);

        GaugeStudy Result(double ev, double av, double both, double pv, double interactionP) => new()
        {
            Parts = n,
            Persons = k,
            Trials = t,
            Ev = ev,
            Av = Math.Sqrt(Math.Max(0, av)),
            Interaction = Math.Sqrt(Math.Max(0, both)),
            Pv = Math.Sqrt(Math.Max(0, pv)),
            InteractionP = interactionP,
        };
    }

    /// <summary>The readings of a named study among <c>gauge</c> entries; a setting's left and right are two parts.</summary>
    public static IEnumerable<StudyReading> Readings(IEnumerable<Entry> entries, string study)
    {
        ArgumentNullException.ThrowIfNull(entries);
        foreach (var e in entries)
        {
            if (!e.Is(GaugeEntry.Kind) || e[GaugeEntry.Study] != study || e[GaugeEntry.Setting] is not { } setting) continue;
            if (e[GaugeEntry.LeftMm] is { } left) yield return new($"{setting} {Stations.Left}", e.By ?? "", left);
            if (e[GaugeEntry.RightMm] is { } right) yield return new($"{setting} {Stations.Right}", e.By ?? "", right);
        }
    }
}
