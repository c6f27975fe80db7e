using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>The chain of bench heights and what the record teaches of screws and gauge.</summary>
public sealed class HeightModelTests
{
    private const string Told = """{"kind":"unit","screwMmPerTurn":1.25}""";

    [Fact]
    public void One_turn_and_two_readings_come_out_as_by_hand()
    {
        // Worked in docs/model-height.md: 5.00 ± 0.035; +0.8 turn gives 5.925 ± 0.0936; read 5.98: 5.973 ± 0.033.
        var book = HeightBook.Entries(Told, HeightBook.Gauge(5, 5), HeightBook.Screw(0.8, 0), HeightBook.Lock, HeightBook.Gauge(5.98, 5.15));
        var turned = HeightBelief.Of(HeightTrack.Of(HeightBook.Unit, book[..4], learnScatter: false)).BenchMm(0);
        Assert.Equal(5.925, turned.Mean, 0.002);
        Assert.Equal(0.0936, turned.Sd, 0.001);
        var read = HeightBelief.Of(HeightTrack.Of(HeightBook.Unit, book[..5], learnScatter: false)).BenchMm(0);
        Assert.Equal(5.973, read.Mean, 0.003);
        Assert.Equal(0.0328, read.Sd, 0.001);
    }

    [Fact]
    public void One_pass_and_the_whole_record_agree_as_all_is_linear()
    {
        Gen.Select(Gen.Int[0, 3], Gen.Double[-0.6, 0.6], Gen.Double[-0.6, 0.6], Gen.Double[-0.1, 0.1]).Array[1, 12].Sample(acts =>
        {
            var bodies = new List<string> { HeightBook.Gauge(5, 5.1) };
            foreach (var (kind, a, b, c) in acts)
            {
                bodies.Add(kind switch { 0 => HeightBook.Screw(a, b), 1 => HeightBook.Lock, 2 => HeightBook.Mow(), _ => HeightBook.Gauge(5 + c, 5.1 - c) });
            }
            var track = HeightTrack.Of(HeightBook.Unit, HeightBook.Entries([.. bodies]), learnScatter: false);
            if (track.InDoubt) return;
            var (pass, whole) = (track.Running, HeightBelief.Of(track).Last);
            for (var i = 0; i < pass.Size; i++)
            {
                var sd = Math.Sqrt(whole.Covariance[(i * whole.Size) + i]);
                Assert.Equal(whole.Mean[i], pass.Mean[i], 1e-5 * (1 + sd));
                Assert.Equal(sd, Math.Sqrt(pass.Covariance[(i * pass.Size) + i]), 1e-5 * (1 + sd));
            }
        }, iter: 60);
    }

    [Fact]
    public void Left_and_right_are_treated_alike()
    {
        var one = HeightBook.Belief(HeightBook.Gauge(5, 5.2), HeightBook.Screw(0.4, -0.2), HeightBook.Lock, HeightBook.Gauge(5.5, 5));
        var other = HeightBook.Belief(HeightBook.Gauge(5.2, 5), HeightBook.Screw(-0.2, 0.4), HeightBook.Lock, HeightBook.Gauge(5, 5.5));
        Assert.Equal(one.BenchMm(0).Mean, other.BenchMm(1).Mean, 1e-8);
        Assert.Equal(one.PullShare(1).Mean, other.PullShare(0).Mean, 1e-8);
        Assert.Equal(one.ScrewMmPerTurn(0).Sd, other.ScrewMmPerTurn(1).Sd, 1e-8);
    }

    [Fact]
    public void The_thread_and_the_pull_are_learned_from_readings_around_turns()
    {
        // A unit of 1.5 mm a turn on whose right a tenth of the left's move arrives; always upward, so slack plays no part after the first turn.
        var bodies = new List<string> { HeightBook.Screw(0.3, 0.3), HeightBook.Lock, HeightBook.Gauge(4, 4) };
        double left = 4, right = 4;
        for (var i = 0; i < 4; i++)
        {
            var (l, r) = i % 2 == 0 ? (0.5, 0.0) : (0.0, 0.5);
            left += (1.5 * l) + (0.15 * r);
            right += (1.5 * r) + (0.15 * l);
            bodies.AddRange([HeightBook.Screw(l, r), HeightBook.Lock, HeightBook.Gauge(left, right)]);
        }
        var b = HeightBook.Belief([.. bodies]);
        Assert.Equal(1.5, b.ScrewMmPerTurn(0).Mean, 0.05);
        Assert.True(b.ScrewMmPerTurn(0).Sd < 0.06);
        Assert.Equal(0.1, b.PullShare(1).Mean, 0.03);
        Assert.True(b.PullShare(1).Sd < 0.05);
    }

    [Fact]
    public void Lost_motion_is_learned_from_going_back_and_forth()
    {
        // 1.25 mm a turn, 0.2 turns lost at each change: a turn back moves 0.8 of one, half a turn further on all of it. A sixth of it pulls the right.
        var bodies = new List<string> { Told, HeightBook.Screw(0.5, 0.5), HeightBook.Lock, HeightBook.Gauge(5, 5) };
        for (var i = 0; i < 4; i++)
        {
            var down = i % 2 == 0;
            var sign = down ? -1 : 1;
            double first = down ? 4 : 4.375, then = down ? 3.375 : 5;
            bodies.AddRange([HeightBook.Screw(sign, 0), HeightBook.Lock, HeightBook.Gauge(first, 5 + ((first - 5) / 6))]);
            bodies.AddRange([HeightBook.Screw(sign * 0.5, 0), HeightBook.Lock, HeightBook.Gauge(then, 5 + ((then - 5) / 6))]);
        }
        var b = HeightBook.Belief([.. bodies]);
        Assert.Equal(0.2, b.LostTurns(0).Mean, 0.03);
        Assert.True(b.LostTurns(0).Sd < 0.035 && b.LostTurns(1).Sd > 0.045, $"{b.LostTurns(0)} {b.LostTurns(1)}");
    }

    [Fact]
    public void A_turn_that_only_takes_up_slack_raises_next_to_nothing()
    {
        string[] book = ["""{"kind":"unit","priors":{"lostTurns":[0.3,0.01],"screwMmPerTurn":[1.25,0.02]}}""", HeightBook.Screw(1, 1), HeightBook.Lock, HeightBook.Gauge(5, 5)];
        var (before, back) = (HeightBook.Belief(book), HeightBook.Belief([.. book, HeightBook.Screw(-0.15, 0)]));
        Assert.Equal(before.BenchMm(0).Mean, back.BenchMm(0).Mean, 0.01);
        // And what went only part of the slack has only that part to go again.
        var again = HeightBook.Belief([.. book, HeightBook.Screw(-0.15, 0), HeightBook.Screw(0.25, 0)]);
        Assert.Equal(before.BenchMm(0).Mean + 0.125, again.BenchMm(0).Mean, 0.02);
    }

    [Fact]
    public void The_shift_by_locking_is_shown_only_where_loose_and_tight_were_read()
    {
        const string Loose = ",\"locked\":false";
        Assert.Null(HeightBook.Belief(HeightBook.Gauge(5, 5), HeightBook.Screw(0.1, 0), HeightBook.Lock, HeightBook.Gauge(5.1, 5)).LockShiftMm(0));
        Assert.Null(HeightBook.Belief(HeightBook.Gauge(5, 5, Loose)).LockShiftMm(0));
        var bodies = new List<string>();
        for (var i = 0; i < 5; i++) bodies.AddRange([HeightBook.Gauge(5, 5, Loose), HeightBook.Lock, HeightBook.Gauge(5.05, 4.97)]);
        var b = HeightBook.Belief([.. bodies]);
        Assert.InRange(b.LockShiftMm(0)!.Value.Mean, 0.02, 0.05);
        Assert.InRange(b.LockShiftMm(1)!.Value.Mean, -0.03, -0.01);
    }

    [Fact]
    public void A_fine_gauge_and_a_coarse_one_are_told_apart_by_repeats()
    {
        static HeightEstimate Sd(double by) => HeightBook.Belief([.. Enumerable.Range(0, 12).Select(i => HeightBook.Gauge(5 + (by * (i % 3 - 1)), 5 - (by * (i % 2 - 0.5))))]).GaugeSdMm;
        Assert.True(Sd(0.01).Mean < 0.02, $"{Sd(0.01)}");
        Assert.True(Sd(0.12).Mean > 0.07, $"{Sd(0.12)}");
    }

    [Fact]
    public void Each_person_has_a_scatter_of_their_own()
    {
        static string By(int i, string who, double by) => HeightBook.Gauge(5 + (by * (i % 3 - 1)), 5 - (by * (i % 3 - 1)), $",\"by\":\"{who}\"");
        var track = HeightBook.Track([.. Enumerable.Range(0, 12).SelectMany(i => new[] { By(i, "a", 0.01), By(i, "b", 0.15) })]);
        Assert.Equal(["a", "b"], track.People.Select(p => p.By));
        Assert.True(track.People[1].Estimate.Mean > 3 * track.People[0].Estimate.Mean);
    }

    [Fact]
    public void Knocks_between_sittings_leave_it_less_certain()
    {
        string[] book = [.. Enumerable.Repeat(HeightBook.Gauge(5, 5), 6)];
        var (before, after) = (HeightBook.Belief(book).BenchMm(0).Sd, HeightBook.Belief([.. book, HeightBook.Mow()]).BenchMm(0).Sd);
        Assert.Equal(Math.Sqrt((before * before) + (HeightDefaults.KnockMm * HeightDefaults.KnockMm)), after, 0.002);
        Assert.Equal(after, HeightBook.Belief([.. book, HeightBook.Mow(), HeightBook.Mow()]).BenchMm(0).Sd, 0.001);
    }

    [Fact]
    public void A_mistaken_reading_is_laid_aside_once_the_next_one_says_so()
    {
        string[] book = [.. Enumerable.Repeat(HeightBook.Gauge(5, 5), 4), HeightBook.Gauge(5.6, 5)];
        Assert.True(HeightBook.Track(book).InDoubt);
        var b = HeightBook.Belief([.. book, HeightBook.Gauge(5.01, 5)]);
        Assert.False(b.Track.InDoubt);
        Assert.Equal(5, b.BenchMm(0).Mean, 0.02);
        Assert.True(b.GaugeSdMm.Mean < 0.05);
    }

    [Fact]
    public void A_side_that_moved_unseen_is_believed_once_it_is_read_again()
    {
        var b = HeightBook.Belief([.. Enumerable.Repeat(HeightBook.Gauge(5, 5), 4), HeightBook.Gauge(5.4, 5), HeightBook.Gauge(5.41, 5)]);
        Assert.False(b.Track.InDoubt);
        Assert.Equal(5.4, b.BenchMm(0).Mean, 0.03);
    }

    [Fact]
    public void The_same_entries_give_the_same_bits()
    {
        string[] book = [HeightBook.Gauge(5, 5.2), HeightBook.Screw(0.4, -0.2), HeightBook.Lock, HeightBook.Gauge(5.5, 5), HeightBook.Mow(), HeightBook.After("[4.5,4.7]")];
        Assert.Equal(HeightBook.Belief(book).Last.Mean, HeightBook.Belief(book).Last.Mean);
    }

    [Fact]
    public void What_is_said_of_the_next_reading_is_kept_score_of()
    {
        var rows = HeightBook.Track([.. Enumerable.Repeat(HeightBook.Gauge(5, 5), 5)]).Score.Rows.ToList();
        Assert.Equal([50, 75, 90], rows.Select(r => r.InHundred));
        Assert.All(rows, r => Assert.Equal(10, r.Said));
        Assert.True(rows[2].CameTrue >= rows[0].CameTrue);
    }

    [Fact]
    public void Within_tolerance_grows_with_the_tolerance_and_is_no_surer_than_the_worse_side()
    {
        var b = HeightBook.Belief(HeightBook.Gauge(5.02, 5.2), HeightBook.Gauge(5, 5.16));
        var last = 0.0;
        for (var tol = 0.01; tol < 0.5; tol += 0.02)
        {
            var p = b.WithinTolerance(new(5, 5), tol);
            Assert.InRange(p, last, 1);
            var worse = b.Parts.Sum(part => part.Weight * Right(part.Belief, tol));
            Assert.True(p <= worse + 1e-6, $"{tol}: {p} and {worse}");
            last = p;
        }
        Assert.True(last > 0.99);

        static double Right(Closemown.Estimation.GaussianState g, double tol)
        {
            var side = new HeightEstimate(g.Mean[1], Math.Sqrt(g.Covariance[g.Size + 1]));
            return side.Below(5 + tol) - side.Below(5 - tol);
        }
    }
}
