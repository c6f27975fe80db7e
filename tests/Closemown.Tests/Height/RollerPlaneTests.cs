using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>The plane under both rollers and the edge over it.</summary>
public sealed class RollerPlaneTests
{
    private static readonly Gen<(Roller Front, Roller Rear)> Pairs = Gen.Select(Gen.Double[10, 60], Gen.Double[10, 60], Gen.Double[-10, 10], Gen.Double[130, 400])
        .Select((rf, rr, y, span) => (new Roller(0, 0, rf), new Roller(span, y, rr)));

    // Source: external common tangent of two circles; row height-1, computed from the published formula, 1e-10 relative.
    [Fact]
    public void Two_unlike_rollers_give_the_published_height()
    {
        const string Id = "height-1";
        double[] f = CheckRows.Inputs(Id, "frontCentre"), r = CheckRows.Inputs(Id, "rearCentre"), e = CheckRows.Inputs(Id, "edge");
        double Height(double up) => RollerPlane.HeightMm(new(f[0], f[1] + up, CheckRows.Input(Id, "frontRadius")), new(r[0], r[1], CheckRows.Input(Id, "rearRadius")), e[0], e[1]);
        var expected = CheckRows.Expected(Id, "height");
        Assert.Equal(expected, Height(0), 1e-10 * expected);
        var change = CheckRows.Expected(Id, "changeWhenFrontCentreRises1mm");
        Assert.Equal(change, Height(1) - Height(0), 1e-9 * Math.Abs(change));
    }

    // Source: plane geometry; row height-2.
    [Fact]
    public void Like_rollers_with_level_axes_give_radius_less_axis_height()
    {
        double radius = CheckRows.Input("height-2", "radius"), above = CheckRows.Input("height-2", "centreAboveEdge");
        var height = RollerPlane.HeightMm(new(-100, above, radius), new(90, above, radius), 0, 0);
        Assert.Equal(CheckRows.Expected("height-2", "height"), height, 1e-11);
    }

    [Fact]
    public void The_plane_touches_both_rollers()
    {
        // A roller's own axis stands exactly its radius above the plane: that is what touching means.
        Pairs.Sample(p =>
        {
            Assert.Equal(p.Front.RadiusMm, RollerPlane.HeightMm(p.Front, p.Rear, p.Front.XMm, p.Front.YMm), 1e-9);
            Assert.Equal(p.Rear.RadiusMm, RollerPlane.HeightMm(p.Front, p.Rear, p.Rear.XMm, p.Rear.YMm), 1e-9);
        });
    }

    [Fact]
    public void Turning_the_whole_unit_changes_no_height()
    {
        Gen.Select(Pairs, Gen.Double[-0.4, 0.4], Gen.Double[20, 100], Gen.Double[-40, 0]).Sample((p, a, x, y) =>
        {
            Roller Turned(Roller r) => new((Math.Cos(a) * r.XMm) - (Math.Sin(a) * r.YMm), (Math.Sin(a) * r.XMm) + (Math.Cos(a) * r.YMm), r.RadiusMm);
            var (front, rear) = (Turned(p.Front), Turned(p.Rear));
            var before = RollerPlane.HeightMm(p.Front, p.Rear, x, y);
            var after = RollerPlane.HeightMm(front, rear, (Math.Cos(a) * x) - (Math.Sin(a) * y), (Math.Sin(a) * x) + (Math.Cos(a) * y));
            Assert.Equal(before, after, 1e-8);
        });
    }

    [Fact]
    public void Axis_for_a_height_gives_that_height_whichever_roller_moves()
    {
        Gen.Select(Pairs, Gen.Double[0.2, 0.8], Gen.Double[-40, -5], Gen.Double[1, 40]).Sample((p, share, y, height) =>
        {
            var x = share * p.Rear.XMm;
            if (Math.Abs(p.Rear.RadiusMm - height) > 0.8 * (p.Rear.XMm - x) || Math.Abs(p.Front.RadiusMm - height) > 0.8 * x) return;
            var front = p.Front with { YMm = RollerPlane.AxisForHeightMm(p.Front, p.Rear, x, y, height) };
            Assert.Equal(height, RollerPlane.HeightMm(front, p.Rear, x, y), 1e-8);
            var rear = p.Rear with { YMm = RollerPlane.AxisForHeightMm(p.Rear, p.Front, x, y, height) };
            Assert.Equal(height, RollerPlane.HeightMm(p.Front, rear, x, y), 1e-8);
        });
    }

    [Fact]
    public void The_lean_is_that_of_the_worked_example() =>
        Assert.Equal(-2.866, RollerPlane.LeanDeg(new(0, 0, 30), new(200, 0, 40)), 0.0005);

    [Fact]
    public void Rollers_that_no_plane_touches_are_refused_with_the_measurement_to_take_again()
    {
        Assert.Contains("span and diameters", Assert.Throws<ArgumentException>(() => RollerPlane.HeightMm(new(0, 0, 10), new(15, 0, 30), 5, 0)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RollerPlane.HeightMm(new(0, 0, 0), new(100, 0, 30), 5, 0));
        Assert.Throws<ArgumentException>(() => RollerPlane.HeightMm(new(0, 0, 30), new(-100, 0, 30), 5, 0));
        Assert.Throws<ArgumentException>(() => RollerPlane.AxisForHeightMm(new(0, 0, 30), new(100, 0, 30), 120, -26, 4));
        Assert.Throws<ArgumentException>(() => RollerPlane.AxisForHeightMm(new(0, 0, 30), new(100, 0, 30), 50, -26, 0));
    }
}
