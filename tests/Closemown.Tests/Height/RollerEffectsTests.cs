using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>Tilt, attitude, rollers that changed, and what the knife leaves above the turf.</summary>
public sealed class RollerEffectsTests
{
    private static readonly RollerGeometry Even = new() { FrontMm = 60, RearMm = 60, SpanMm = 200, EdgeXMm = 100, EdgeYMm = -26 };

    [Fact]
    public void A_tenth_over_46_centimetres_is_0_217_a_metre() => Assert.Equal(0.217, Tilt.MmPerMetre(new(5, 5.1), (-230, 230)), 0.0005);

    [Fact]
    public void Raising_lifts_the_nose_by_the_angle_of_the_worked_example()
    {
        Assert.Equal(1.15, Tilt.AttitudeChangeDeg(Even, 4, 6), 0.02);
        Gen.Select(Gen.Double[2, 9], Gen.Double[2, 9]).Sample((a, b) =>
            Assert.Equal(Tilt.AttitudeChangeDeg(Even, a, b), -Tilt.AttitudeChangeDeg(Even, b, a), 1e-10));
        Assert.True(Tilt.AttitudeChangeDeg(Even with { Screws = ScrewedRoller.Rear }, 4, 6) < 0, "screws at the rear roller lift the tail");
    }

    [Fact]
    public void A_worn_front_roller_lowers_and_tape_raises_by_the_worked_examples()
    {
        Assert.Equal(-0.25, RollerShift.HeightChangeMm(Even, -1, 0), 0.003);
        Assert.Equal(0.075, RollerShift.HeightChangeMm(Even, 0.3, 0), 0.001);
        Assert.Equal(0.5, RollerShift.HeightChangeMm(Even, 1, 1), 1e-9);         // both rollers alike: the whole of the radius
    }

    [Fact]
    public void A_grooved_roller_rides_lower_on_turf_than_on_the_bench()
    {
        Assert.Equal(-0.15, RollerShift.GroovedRideMm(Even, 3, 0.1), 0.002);
        Assert.Equal(0, RollerShift.GroovedRideMm(Even, 3, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RollerShift.GroovedRideMm(Even, 30, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RollerShift.GroovedRideMm(Even, 3, 1.1));
    }

    [Fact]
    public void The_knife_drags_below_the_lowest_bench_height_and_not_above()
    {
        Assert.Equal(2.2, KnifeClear.RoomMm(5, 2.2, 0.6), 1e-12);
        Assert.Equal(3.1, KnifeClear.LowestBenchMm(2.2, 0.6), 1e-12);
        Assert.Equal(2.5, KnifeClear.LowestCutMm(2.2, 0.6), 1e-12);
        Assert.Equal(3.4, KnifeClear.LowestCutMm(2.2, 0.6, lowestByScrewsMm: 4), 1e-12);
        Gen.Select(Gen.Double[0.5, 4], Gen.Double[-0.5, 1.5]).Sample((lip, sink) =>
        {
            var lowest = KnifeClear.LowestBenchMm(lip, sink);
            Assert.True(KnifeClear.Drags(lowest - 0.01, lip, sink));
            Assert.False(KnifeClear.Drags(lowest + 0.01, lip, sink));
        });
    }

    // Sources in the rows: beam tables (case number from memory); GUM H.1; plane geometry.
    [Fact]
    public void Sag_warmth_and_a_gauge_held_askew_give_the_published_figures()
    {
        var sag = GaugeErrors.BarSagUm(CheckRows.Input("sag-1", "L"), CheckRows.Input("sag-1", "t"), CheckRows.Input("sag-1", "E"), CheckRows.Input("sag-1", "density"));
        Assert.Equal(CheckRows.Expected("sag-1", "sag"), sag, 1e-9 * sag);
        var grown = GaugeErrors.WarmthUm(CheckRows.Input("thermal-1", "L"), CheckRows.Input("thermal-1", "dT"), CheckRows.Input("thermal-1", "alpha"));
        Assert.Equal(CheckRows.Expected("thermal-1", "dL"), grown, 1e-12 * grown);
        var askew = GaugeErrors.AskewUm(CheckRows.Input("cosine-1", "L"), CheckRows.Input("cosine-1", "theta"));
        Assert.Equal(CheckRows.Expected("cosine-1", "error"), askew, 1e-12 * askew);
    }

    // Sources in the rows: ISO 261 as seen in public thread charts; ASME B1.1 from memory.
    [Theory]
    [InlineData("thread-1")]
    [InlineData("thread-2")]
    [InlineData("thread-3")]
    [InlineData("thread-4")]
    [InlineData("thread-5")]
    public void A_thread_is_read_as_it_is_written(string id)
    {
        var pitch = CheckRows.Expected(id, "pitch");
        Assert.Equal(pitch, ThreadPitch.Mm(CheckRows.Word(id, "thread"))!.Value, 1e-12 * pitch);
    }

    [Theory]
    [InlineData("")]
    [InlineData("M")]
    [InlineData("M8x0")]
    [InlineData("3/8-")]
    [InlineData("bolt")]
    public void An_unknown_thread_has_no_pitch(string thread) => Assert.Null(ThreadPitch.Mm(thread));
}
