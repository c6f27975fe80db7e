namespace Closemown.Pages;

/// <summary>A row of bars over days: rain, or what the weather draws.</summary>
/// <param name="Name">What it is, for the legend and the table.</param>
/// <param name="Class">The class of its bars: <c>steelfill</c> is filled, <c>amber</c> an outline.</param>
/// <param name="Bars">In ascending order of place, as many in each row of a chart.</param>
public sealed record BarRow(string Name, string Class, IReadOnlyList<Bar> Bars);

/// <summary>One bar.</summary>
/// <param name="X">Its place along the chart, whole days.</param>
/// <param name="Y">How high, 0 or more.</param>
/// <param name="Says">What is read at it.</param>
public readonly record struct Bar(double X, double Y, string Says);
