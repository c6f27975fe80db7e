using Closemown.Entries;

namespace Closemown.Height;

/// <summary>Rollers, bedknife edge and height screws of a unit, as told; lengths in mm, turns + raise the edge.</summary>
/// <remarks>The frame is the unit's own: the line through both axes lies level at zero turns, x runs rearward from the front axis, y upward.</remarks>
public sealed record RollerGeometry
{
    /// <summary>Diameter of the front roller, mm.</summary>
    public required double FrontMm { get; init; }

    /// <summary>Diameter of the rear roller, mm.</summary>
    public required double RearMm { get; init; }

    /// <summary>Distance between the axes, mm.</summary>
    public required double SpanMm { get; init; }

    /// <summary>Bedknife edge from the front axis, rearward +, mm.</summary>
    public required double EdgeXMm { get; init; }

    /// <summary>Bedknife edge from the front axis, upward + (mostly negative), mm.</summary>
    public required double EdgeYMm { get; init; }

    /// <summary>What one turn of a height screw moves its bracket, mm: pitch × lever. Untold: the 1.25 mm of an M8 thread (common practice, no source).</summary>
    public double BracketMmPerTurn { get; init; } = HeightDefaults.MmPerTurn.Mean;

    /// <summary>Which roller the screws move.</summary>
    public ScrewedRoller Screws { get; init; }

    /// <summary>Where the left and the right bracket stand, mm from the middle, left negative. Untold: −280 and 280.</summary>
    public (double Left, double Right) BracketAtMm { get; init; } = (-280, 280);

    /// <summary>Where the height is read, mm from the middle, left negative. Untold: −230 and 230.</summary>
    public (double Left, double Right) ReadAtMm { get; init; } = (-230, 230);

    /// <summary>The geometry that <c>unit</c> entries tell, or null while front and rear diameter, span or edge position are missing.</summary>
    public static RollerGeometry? Of(IEnumerable<Entry> unitEntries)
    {
        ArgumentNullException.ThrowIfNull(unitEntries);
        double? front = null, rear = null, span = null, pitch = null, lever = null;
        IReadOnlyList<double>? edge = null, brackets = null, stations = null;
        foreach (var e in unitEntries)
        {
            front = e[UnitEntry.RollerFrontMm] ?? front;
            rear = e[UnitEntry.RollerRearMm] ?? rear;
            span = e[UnitEntry.RollerSpanMm] ?? span;
            pitch = e[UnitEntry.ScrewMmPerTurn] ?? pitch;
            lever = e[UnitEntry.ScrewLever] ?? lever;
            edge = e[UnitEntry.EdgeAtMm] ?? edge;
            brackets = e[UnitEntry.AdjusterAtMm] ?? brackets;
            stations = e[UnitEntry.StationAtMm] ?? stations;
        }
        if (front is not { } f || rear is not { } r || span is not { } s || edge is null) return null;
        var g = new RollerGeometry { FrontMm = f, RearMm = r, SpanMm = s, EdgeXMm = edge[0], EdgeYMm = edge[1], BracketMmPerTurn = (pitch ?? HeightDefaults.MmPerTurn.Mean) * (lever ?? 1) };
        if (brackets is [var bl, var br] && br > bl) g = g with { BracketAtMm = (bl, br) };
        return stations is [var sl, _, var sr] && sr > sl ? g with { ReadAtMm = (sl, sr) } : g;
    }

    /// <summary>The front roller when its axis at a place across the width stands that much lower than at zero turns.</summary>
    internal Roller Front(double dropMm) => new(0, Screws == ScrewedRoller.Front ? -dropMm : 0, FrontMm / 2);

    /// <summary>The rear roller, likewise.</summary>
    internal Roller Rear(double dropMm) => new(SpanMm, Screws == ScrewedRoller.Rear ? -dropMm : 0, RearMm / 2);
}
