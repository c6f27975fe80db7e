namespace Closemown.Pages;

/// <summary>One estimated quantity along a chart: a line in its band.</summary>
/// <param name="Name">What it is, for the legend and the table.</param>
/// <param name="Class">The class of its line: <c>steel</c>, <c>turf</c>, <c>amber</c>, <c>steel second</c>; its band is drawn in the first word's tint.</param>
/// <param name="Points">In ascending order of place; a point that is not a number breaks the line.</param>
public sealed record ChartSeries(string Name, string Class, IReadOnlyList<ChartPoint> Points)
{
    /// <summary>Whether single points are drawn, each with what it says; else the line alone.</summary>
    public bool Dots { get; init; } = true;
}

/// <summary>A point of a series.</summary>
/// <param name="X">Its place along the chart.</param>
/// <param name="Y">As estimated; NaN breaks the line.</param>
/// <param name="Low">It lies above this with 95 in 100; as Y where no band is drawn.</param>
/// <param name="High">It lies below this with 95 in 100.</param>
/// <param name="Says">What is read at it: "Sat 22 Aug: 6.1 mm (5.3 to 6.9)".</param>
public readonly record struct ChartPoint(double X, double Y, double Low, double High, string Says);

/// <summary>Something that happened at a place along the chart, marked by a short upright line with a word.</summary>
/// <param name="X">Its place.</param>
/// <param name="Word">One short word: "mown", "lap".</param>
/// <param name="Says">What is told of it in the table: "Thu 20 Aug: mown, 0.8 h"; empty for nothing.</param>
/// <param name="Class">The class of its line.</param>
public readonly record struct ChartMark(double X, string Word, string Says = "", string Class = "ink");

/// <summary>A level that lines are read against: the wished height, the strip's thickness.</summary>
/// <param name="Y">Its height.</param>
/// <param name="Word">What it is.</param>
public readonly record struct ChartRule(double Y, string Word);
