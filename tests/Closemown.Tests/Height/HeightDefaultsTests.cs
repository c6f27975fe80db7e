using Closemown.Entries;
using Closemown.Height;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>The starting values of the height, row by row, so that a change is deliberate. All rows: common practice or assumption, no source.</summary>
public sealed class HeightDefaultsTests
{
    private static void Is(double mean, double sd, Prior p) => Assert.Equal((mean, sd), (p.Mean, p.Sd));

    [Fact]
    public void Screws_and_gauge_start_from_the_table()
    {
        Is(1.25, 0.25, HeightDefaults.MmPerTurn);
        Is(0.15, 0.06, HeightDefaults.PullShare);
        Is(0.12, 0.05, HeightDefaults.LostTurns);
        Is(0, 0.08, HeightDefaults.GaugeZeroMm);
        Assert.Equal((0.035, 0.012, 0.02), (HeightDefaults.GaugeSdMm, HeightDefaults.HandTurns, HeightDefaults.SmallestTurn));
        Assert.Equal((0.015, 0.05, 0.1), (HeightDefaults.LockScatterMm, HeightDefaults.KnockMm, HeightDefaults.GrainMm));
    }

    [Fact]
    public void Sink_starts_from_the_table()
    {
        Is(0.6, 0.45, HeightDefaults.SinkMm);
        Is(0.15, 0.15, HeightDefaults.SinkGroovedMm);
        Assert.Equal(0.3, HeightDefaults.CanopySdMm["prism"]);
        Assert.Equal(0.3, HeightDefaults.CanopySdMm["ruler"]);
    }

    [Fact]
    public void A_told_thread_is_taken_with_its_lever_to_5_in_100()
    {
        var b = HeightBook.Belief("""{"kind":"unit","screwMmPerTurn":1.5,"screwLever":0.5}""");
        Assert.Equal(0.75, b.ScrewMmPerTurn(0).Mean, 1e-9);
        Assert.Equal(0.0375, b.ScrewMmPerTurn(0).Sd, 1e-9);
    }

    [Fact]
    public void Each_starting_value_can_be_the_persons_own()
    {
        var b = HeightBook.Belief("""{"kind":"unit","priors":{"sinkMm":[0.2,0.1],"pullShare":[0.3,0.01],"gaugeSdMm":[0.1,0.01],"screwMmPerTurn":[2,0.1],"gaugeZeroMm":[0.05,0.01]}}""");
        Assert.Equal(2, b.ScrewMmPerTurn(1).Mean, 1e-9);
        Assert.Equal(0.3, b.PullShare(0).Mean, 1e-9);
        Assert.Equal(0.1, b.GaugeSdMm.Mean, 0.005);
        Assert.Equal(0.25, b.SinkMm().Mean, 1e-9);       // zero and sink: what the gauge reads more than is cut
    }
}
