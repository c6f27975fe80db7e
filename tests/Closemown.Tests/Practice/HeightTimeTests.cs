using System.Globalization;
using Xunit;
using static Closemown.Tests.Practice.HeightTold;

namespace Closemown.Tests.Practice;

/// <summary>Time that passes between two sittings, and heights that a person tells with a mowing. Common practice, no source.</summary>
public sealed class HeightTimeTests
{
    // A unit told nothing of, one with a fine gauge, one with a coarse gauge, one of which the thread is told.
    private static readonly string[] Units =
    [
        """{"kind":"unit","unit":"u"}""",
        """{"kind":"unit","unit":"u","priors":{"gaugeSdMm":[0.01,0.002]}}""",
        """{"kind":"unit","unit":"u","priors":{"gaugeSdMm":[0.06,0.01]}}""",
        """{"kind":"unit","unit":"u","screwMmPerTurn":1.25,"priors":{"benchMm":[5,0.3]}}""",
    ];

    public static TheoryData<int> States => [0, 1, 2, 3];

    [Theory]
    [MemberData(nameof(States))]
    public void P32_a_height_set_last_week_is_read_once_before_it_is_called_done(int state)
    {
        var pipe = Set(state);
        Assert.Equal("mow", pipe.Aim(5).Do());
        pipe.Say(Later(7));
        var next = pipe.Aim(5);
        Assert.Equal("gauge", next.Do());
        Assert.Contains("earlier sitting", next.Said(), StringComparison.Ordinal);
        // Read as it was, with a tolerance that one reading can hold: done, after that one reading.
        pipe.Say(Gauge(5, 5));
        Assert.Equal("mow", pipe.Aim(5, 0.6, 0.15).Do());
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P32_what_a_gap_adds_is_in_the_answer_without_a_further_entry_of_the_unit(int state)
    {
        var pipe = Set(state);
        var before = pipe.Height()["benchMm"]!["left"]!;
        var within = (double)pipe.Aim(5)["within"]!;
        pipe.Say(Later(7));
        var after = pipe.Height()["benchMm"]!["left"]!;
        double sd0 = (double)before["sd"]!, sd1 = (double)after["sd"]!;
        Assert.Equal(Math.Sqrt((sd0 * sd0) + (0.05 * 0.05)), sd1, 2e-4);
        Assert.Equal((double)before["mean"]!, (double)after["mean"]!, 1e-9);
        Assert.True((double)pipe.Aim(5)["within"]! < within - 0.1, "less sure than before the week");
        // The next entry finds what the question told, no more: a sitting is counted once.
        pipe.Say("""{"kind":"locked"}""");
        Assert.Equal(sd1, (double)pipe.Height()["benchMm"]!["left"]!["sd"]!, 1e-6);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P32_asking_within_the_sitting_changes_nothing(int state)
    {
        var pipe = Set(state);
        string height = pipe.Height().ToJsonString(), next = pipe.Aim(5)["do"]!.ToJsonString();
        Assert.Equal(height, pipe.Height().ToJsonString());
        pipe.Say(Later(0.2));
        Assert.Equal(((double)pipe.Height()["benchMm"]!["left"]!["sd"]!).ToString("R", CultureInfo.InvariantCulture), Sd(height));
        Assert.Equal(next, pipe.Aim(5)["do"]!.ToJsonString());

        static string Sd(string json) => ((double)System.Text.Json.Nodes.JsonNode.Parse(json)!["benchMm"]!["left"]!["sd"]!).ToString("R", CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData(4.25)]
    [InlineData(4.8)]
    [InlineData(6.5)]
    public void P31_a_bench_height_told_with_a_mowing_that_differs_is_a_new_setting(double told)
    {
        foreach (var state in Enumerable.Range(0, Units.Length))
        {
            var pipe = Set(state);
            var (turn, lost) = (pipe.Height()["screwMmPerTurn"]!["left"]!.ToJsonString(), pipe.Height()["lostTurns"]!["left"]!.ToJsonString());
            pipe.Say(Mow(Bench(told)));
            var height = pipe.Height();
            foreach (var side in (string[])["left", "right"])
            {
                Assert.Equal(told, (double)height["benchMm"]![side]!["mean"]!, 0.01);
                Assert.InRange((double)height["benchMm"]![side]!["sd"]!, 0.08, 0.13);
            }
            // No reading of the height before: it teaches nothing of screws.
            Assert.Equal((turn, lost), (height["screwMmPerTurn"]!["left"]!.ToJsonString(), height["lostTurns"]!["left"]!.ToJsonString()));
            // And what is told is read once before it is called set.
            Assert.Equal("gauge", pipe.Aim(told, 0.6, 0.4).Do());
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void P31_what_is_believed_anyway_is_no_new_setting(int state)
    {
        Piped told = Set(state), silent = Set(state);
        told.Say(Mow(Bench(5.02)));
        silent.Say(Mow());
        Assert.Equal(silent.Height()["benchMm"]!.ToJsonString(), told.Height()["benchMm"]!.ToJsonString());
    }

    [Fact]
    public void P31_told_twice_alike_it_is_one_setting_and_told_otherwise_it_is_another()
    {
        var pipe = Set(0);
        pipe.Say(Mow(Bench(4.25)));
        var once = pipe.Height()["benchMm"]!.ToJsonString();
        pipe.Say(Mow(Bench(4.25)));
        Assert.Equal(once, pipe.Height()["benchMm"]!.ToJsonString());
        pipe.Say(Mow(Bench(4.3)));
        Assert.Equal(4.3, (double)pipe.Height()["benchMm"]!["left"]!["mean"]!, 0.005);
    }

    [Fact]
    public void P31_the_cut_expected_is_as_good_after_ten_mowings_told_as_after_ten_gauged()
    {
        double told = 0, gauged = 0;
        const int turfs = 12;
        for (var seed = 0; seed < turfs; seed++)
        {
            told += Math.Pow(Error(seed, tell: true), 2);
            gauged += Math.Pow(Error(seed, tell: false), 2);
        }
        (told, gauged) = (Math.Sqrt(told / turfs), Math.Sqrt(gauged / turfs));
        Assert.True(told < gauged + 0.02, $"{told} mm off as told, {gauged} as gauged");
        Assert.True(told < 0.13, $"{told} mm off");
    }

    /// <summary>Ten mowings at settings between 4 and 6, each missed a little, on a turf into which the unit sinks; how far off the cut at 5 is then expected.</summary>
    private static double Error(int seed, bool tell)
    {
        var world = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - world.NextDouble())) * Math.Cos(2 * Math.PI * world.NextDouble());
        var sink = 0.6 + (0.4 * Normal());
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","unit":"u"}""");
        for (var k = 0; k < 10; k++)
        {
            var wanted = Math.Round(4 + (2 * world.NextDouble()), 2);
            double stands = wanted + (0.06 * Normal()), read = 0.035 * Normal(), grain = 0.1 * Normal();
            var spots = Enumerable.Range(0, 5).Select(_ => Math.Max(2.1, Math.Round(stands - sink + grain + (0.3 * Normal()), 1))).ToArray();
            if (!tell) pipe.Say(Screw(0.2, 0.2), Nuts, Gauge(stands + read, stands + read));
            pipe.Say(Mow($""","area":"green"{On(3 * k)}{(tell ? Bench(wanted) : "")}"""),
                $$"""{"kind":"canopy","area":"green","when":"after","how":"prism","mm":[{{string.Join(',', spots.Select(s => s.ToString(CultureInfo.InvariantCulture)))}}]}""");
        }
        return (double)pipe.Height(""","benchMm":5""")["cutMm"]!["mean"]! - (5 - sink);
    }

    private static string Bench(double mm) => FormattableString.Invariant($""","benchMm":{mm}""");

    private static Piped Set(int state)
    {
        var pipe = new Piped();
        pipe.Say(Units[state], Gauge(5, 5, On(0)), Gauge(5, 5), Gauge(5, 5), Gauge(5, 5));
        if (state == 2) pipe.Say([.. Enumerable.Repeat(Gauge(5, 5), 12)]);
        return pipe;
    }
}
