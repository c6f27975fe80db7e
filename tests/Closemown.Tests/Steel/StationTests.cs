using System.Text.Json;
using Closemown.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>The clearance along the width: linear between the adjusters and beyond them.</summary>
public sealed class StationTests
{
    // Source: plane geometry; row station-1 of Checks/mechanics/steel.json, computed from the published formula. Tolerance in the row: 1e-12 relative.
    [Fact]
    public void Clearance_between_and_beyond_the_adjusters_is_linear_in_position()
    {
        var row = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "mechanics", "steel.json"))).RootElement
            .EnumerateArray().Single(r => r.GetProperty("id").GetString() == "station-1");
        double[] Numbers(string group, string name) => [.. row.GetProperty(group).GetProperty(name).GetProperty("value").EnumerateArray().Select(v => v.GetDouble())];
        var adjusters = Numbers("inputs", "adjusters");
        var ends = Numbers("inputs", "clearance");
        var stations = Numbers("inputs", "stations");
        var expected = Numbers("expected", "clearance");
        Assert.Equal(4, stations.Length);
        for (var i = 0; i < stations.Length; i++)
        {
            // Each place of the row as the right station of a unit.
            var unit = new UnitDescription { Name = "u", AdjusterAtMm = adjusters, StationAtMm = [-250, -240, stations[i]] };
            var (l, r) = unit.Weights(2);
            Assert.Equal(expected[i], (l * ends[0]) + (r * ends[1]), 1e-12 * expected[i]);
        }
    }

    [Fact]
    public void The_two_ends_count_for_one_together_wherever_the_station_is()
    {
        Gen.Select(Gen.Double[-400, -50], Gen.Double[50, 400], Gen.Double[-600, 600]).Sample((a, b, at) =>
        {
            var (l, r) = new UnitDescription { Name = "u", AdjusterAtMm = [a, b], StationAtMm = [at, at, at] }.Weights(1);
            Assert.Equal(1, l + r, 1e-9);
            // A pair of ends that slopes as the position itself gives the position back: the meaning of linear.
            Assert.Equal(at, (l * a) + (r * b), 1e-7);
        });
    }

    [Fact]
    public void A_station_at_an_adjuster_has_that_adjusters_clearance()
    {
        var unit = new UnitDescription { Name = "u", AdjusterAtMm = [-280, 280], StationAtMm = [-280, 0, 280] };
        Assert.Equal((1, 0), unit.Weights(0));
        Assert.Equal((0, 1), unit.Weights(2));
        Assert.Equal((0.5, 0.5), unit.Weights(1));
    }

    [Fact]
    public void Only_the_centre_carries_the_bow()
    {
        var unit = SteelBook.Description();
        Assert.Equal([2, 3, 2], Enumerable.Range(0, 3).Select(s => Stations3.ClearanceTerms(unit, s).Length));
        Assert.Contains(Stations3.ClearanceTerms(unit, 1), t => t.Index == Layout.Bow && t.Weight == 1);
    }
}
