namespace Closemown.Estimation;

/// <summary>Which interval readings share one site: those of the very same predictor (same step, positions and weights), whatever their offsets, limits and spreads.</summary>
/// <remarks>
/// Sites are named by their first reading, and rise with it. Readings of a site that are alike in everything are kept once, with
/// their number: the same answer many times over costs no more than once.
/// Readings that share part of their error are one site only with those of their group and kin. The shared part u ~ N(0, s²) is integrated
/// exactly: they all read z = η + u, whose moments are found as those of η are where nothing is shared, and η given z is Gaussian.
/// </remarks>
internal sealed class SiteGroups
{
    private int[] _first = [];
    private int[] _count = [];
    private int[] _start = [];
    private int[] _siteOf = [];
    private int[] _table = [];
    private int[] _fill = [];
    private double[] _least = [];                        // the smallest spread of a site's readings
    private RepeatedReading[] _readings = [];
    private readonly TiltedRepeats _tilted = new();

    /// <summary>The first reading of each site, rising.</summary>
    public ReadOnlySpan<int> First => _first.AsSpan(0, Count);

    /// <summary>Number of sites.</summary>
    public int Count { get; private set; }

    /// <summary>Readings of site s.</summary>
    public int Size(int s) => _count[s];

    /// <summary>The site of the i-th interval of the workspace.</summary>
    public int SiteOf(int i) => _siteOf[i];

    /// <summary>Sorts the workspace's intervals into sites; each on its own unless <paramref name="join"/>.</summary>
    public void Fill(FactorRows rows, Workspace w, bool join)
    {
        var intervals = w.Intervals;
        Reserve(intervals.Length);
        Count = 0;
        var mask = _table.Length - 1;
        if (join) _table.AsSpan().Fill(-1);
        for (var i = 0; i < intervals.Length; i++)
        {
            var at = join ? Hash(rows, intervals[i]) & mask : 0;
            while (join && _table[at] >= 0 && !SamePredictor(rows, _first[_table[at]], intervals[i])) at = (at + 1) & mask;
            var site = join ? _table[at] : -1;
            if (site < 0)
            {
                site = Count++;
                (_first[site], _count[site], _least[site]) = (intervals[i], 0, double.PositiveInfinity);
                if (join) _table[at] = site;
            }

            _siteOf[i] = site;
            _count[site]++;
            _least[site] = Math.Min(_least[site], w.Sd[intervals[i]]);
        }

        if (Count < intervals.Length) Collect(rows, w);
    }

    /// <summary>Site s of a predictor N(m_c, v_c), counted from its first reading's offset.</summary>
    public TiltedReading Tilt(FactorRows rows, Workspace w, int s, double mc, double vc) => _count[s] == 1
        ? new TiltedReading(rows, _first[s], w.Sd[_first[s]], mc, vc)
        : TiltTogether(rows, w, s, mc, vc);

    private TiltedReading TiltTogether(FactorRows rows, Workspace w, int s, double mc, double vc)
    {
        var readings = _readings.AsSpan(_start[s], _fill[s]);
        var shared = SharedVariance(rows, w, s);
        if (shared == 0) return _tilted.Match(readings, mc, vc);
        var of = _tilted.Match(readings, mc, vc + shared);
        var follows = vc / (vc + shared);
        return new TiltedReading(of.F, mc + (follows * (of.Mean - mc)), (vc * (1 - follows)) + (follows * follows * of.Variance), mc, vc);
    }

    /// <summary>Variance of the part of the error that all readings of a site share: a share of the least variance among them.</summary>
    private double SharedVariance(FactorRows rows, Workspace w, int s) => rows.Shared[_first[s]] * _least[s] * _least[s];

    /// <summary>Sums the pseudo-readings of single readings into those of their sites.</summary>
    public void Gather(FactorRows rows, Workspace w)
    {
        if (Count == w.IntervalCount) return;
        for (var i = 0; i < w.IntervalCount; i++)
        {
            int k = w.IntervalList[i], first = _first[_siteOf[i]];
            if (k == first) continue;
            w.SitePrecision[first] += w.SitePrecision[k];
            w.SiteShift[first] += w.SiteShift[k] + (w.SitePrecision[k] * (rows.Offset[k] - rows.Offset[first]));
        }
    }

    /// <summary>Shares the pseudo-reading of each site out equally, so that each reading has its own, counted from its own offset.</summary>
    public void Share(FactorRows rows, Workspace w)
    {
        if (Count == w.IntervalCount) return;
        for (var i = w.IntervalCount - 1; i >= 0; i--)      // the first of a site comes last, when the others no longer need it
        {
            int k = w.IntervalList[i], first = _first[_siteOf[i]], n = _count[_siteOf[i]];
            var precision = w.SitePrecision[first] / n;
            w.SiteShift[k] = (w.SiteShift[first] / n) - (precision * (rows.Offset[k] - rows.Offset[first]));
            w.SitePrecision[k] = precision;
        }
    }

    private void Collect(FactorRows rows, Workspace w)
    {
        var at = 0;
        for (var s = 0; s < Count; s++)
        {
            (_start[s], _fill[s]) = (at, 0);
            at += _count[s];
        }

        var intervals = w.Intervals;
        for (var i = 0; i < intervals.Length; i++)
        {
            var (k, s) = (intervals[i], _siteOf[i]);
            if (_count[s] == 1) continue;
            var shift = rows.Offset[k] - rows.Offset[_first[s]];
            var reading = new RepeatedReading(rows.Low[k] + shift, rows.High[k] + shift, rows.High[k] - rows.Low[k], Math.Sqrt((w.Sd[k] * w.Sd[k]) - SharedVariance(rows, w, s)), 1);
            var same = 0;
            while (same < _fill[s] && !_readings[_start[s] + same].IsLike(reading)) same++;
            if (same < _fill[s]) _readings[_start[s] + same] = _readings[_start[s] + same].OnceMore();
            else _readings[_start[s] + _fill[s]++] = reading;
        }
    }

    private void Reserve(int count)
    {
        if (_siteOf.Length >= count) return;
        count += count / 4;
        (_first, _count, _start, _siteOf, _fill, _least) = (new int[count], new int[count], new int[count], new int[count], new int[count], new double[count]);
        _readings = new RepeatedReading[count];
        _table = new int[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)(2 * count) + 2)];
    }

    private static bool SamePredictor(FactorRows rows, int j, int k)
    {
        int length = rows.Start[j + 1] - rows.Start[j];
        if (rows.Step[j] != rows.Step[k] || rows.Start[k + 1] - rows.Start[k] != length || rows.Shared[j] != rows.Shared[k]) return false;
        if (rows.Shared[j] > 0 && (rows.Group[j] != rows.Group[k] || rows.Kin[j] != rows.Kin[k])) return false;
        return rows.Local.AsSpan(rows.Start[j], length).SequenceEqual(rows.Local.AsSpan(rows.Start[k], length))
            && rows.Weight.AsSpan(rows.Start[j], length).SequenceEqual(rows.Weight.AsSpan(rows.Start[k], length));
    }

    private static int Hash(FactorRows rows, int k)
    {
        var mixed = (ulong)(uint)rows.Step[k] * 0x9E3779B97F4A7C15;
        for (int p = rows.Start[k], end = rows.Start[k + 1]; p < end; p++)
        {
            // A weight of −0 equals one of 0 and must not be told apart.
            mixed = (mixed ^ (ulong)BitConverter.DoubleToInt64Bits(rows.Weight[p] + 0.0) ^ (uint)rows.Local[p]) * 0x9E3779B97F4A7C15;
            mixed ^= mixed >> 29;
        }

        return (int)(mixed >> 33);
    }
}
