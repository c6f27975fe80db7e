using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>Gauge studies against published worked examples.</summary>
public sealed class GaugeStudyTests
{
    private static StudyReading[] Published() => [.. CheckRows.Data("gauge-rr.csv").Select(c => new StudyReading(c[0], c[1], Number(c[3])))];

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    // Source: AIAG, Measurement Systems Analysis, gauge study example; row gauge-1, 1e-9 relative (values of the data from memory).
    [Fact]
    public void Ten_parts_three_persons_three_trials_give_the_published_table()
    {
        var s = GaugeStudy.Of(Published());
        Assert.Equal((10, 3, 3), (s.Parts, s.Persons, s.Trials));
        Assert.True(s.InteractionP > 0.25 && s.Interaction == 0, "the interaction is pooled");
        (string Name, double Value)[] shown = [("EV", s.Ev), ("AV", s.Av), ("GRR", s.Grr), ("PV", s.Pv), ("TV", s.Tv), ("percentGRR", s.PercentGrr)];
        Assert.All(shown, v => Assert.Equal(CheckRows.Expected("gauge-1", v.Name), v.Value, 1e-9 * v.Value));
    }

    // Source: NIST/SEMATECH e-Handbook 2.6.1, probe 2362; row nested-1, 1e-9 relative.
    [Fact]
    public void Three_levels_of_time_come_out_as_published()
    {
        var s = NestedStudy.Of(CheckRows.Data("probe2362.csv").Select(c => new DayAverage(c[0], c[1], Number(c[4]), Number(c[5]))));
        Assert.Equal(CheckRows.Expected("nested-1", "s1"), s.ShortTerm, 1e-9);
        Assert.Equal(CheckRows.Expected("nested-1", "s2"), s.DayToDay, 1e-9);
        Assert.Equal(CheckRows.Expected("nested-1", "s3"), s.RunToRun, 1e-9);
    }

    // Source: NIST StRD SiRstv, certified; row anova-1, 1e-9 relative.
    [Fact]
    public void One_way_analysis_gives_the_certified_ratio()
    {
        var a = OneWay.Of([.. CheckRows.Data("sirstv.csv").GroupBy(c => c[0]).Select(g => (IReadOnlyList<double>)[.. g.Select(c => Number(c[1]))])]);
        var f = CheckRows.Expected("anova-1", "F");
        Assert.Equal(f, a.F, 1e-9 * f);
        Assert.Equal(CheckRows.Expected("anova-1", "residualSd"), a.WithinSd, 1e-10);
    }

    // Source: JCGM 100:2008 (GUM), H.1; row gum-h1: u_c to 1e-3 nm, ν to 0.01, U99 as published (t99(16) = 2.92, u_c taken as 32).
    [Fact]
    public void The_budget_of_an_end_gauge_comes_out_as_in_the_guide()
    {
        const string Id = "gum-h1";
        double ls = CheckRows.Input(Id, "ls"), theta = CheckRows.Input(Id, "theta"), alpha = CheckRows.Input(Id, "alpha");
        double[] parts = CheckRows.Inputs(Id, "u(d) parts"), freedom = CheckRows.Inputs(Id, "nu(d) parts");
        var budget = new UncertaintyBudget(
        [
            new("standard", CheckRows.Input(Id, "u(ls)"), CheckRows.Input(Id, "nu(ls)")),
            .. parts.Select((u, i) => new BudgetLine("difference", u, freedom[i])),
            BudgetLine.Even("expansion", CheckRows.Input(Id, "halfwidth dalpha"), ls * theta, CheckRows.Input(Id, "nu dalpha")),
            BudgetLine.Even("temperature", CheckRows.Input(Id, "halfwidth dtheta"), ls * alpha, CheckRows.Input(Id, "nu dtheta")),
        ]);
        Assert.Equal(CheckRows.Expected(Id, "uc"), budget.Combined, 1e-3);
        Assert.Equal(CheckRows.Expected(Id, "nuEff"), budget.EffectiveFreedom, 0.01);
        Assert.Equal(2.92, budget.Expanded(0.99) / budget.Combined, 0.005);
        Assert.Equal(CheckRows.Expected(Id, "U99"), Math.Round(32 * budget.Expanded(0.99) / budget.Combined), 0.5);
    }

    [Fact]
    public void Where_everything_is_taken_as_known_the_normal_factor_comes_out()
    {
        // Two-sided 95 in 100 of a normal distribution: 1.96 (any table).
        Assert.Equal(1.96, new UncertaintyBudget([BudgetLine.Even("step", Math.Sqrt(3))]).Expanded(0.95), 0.0005);
    }

    [Fact]
    public void A_common_shift_changes_no_spread_and_a_scale_scales_all()
    {
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0.01, 5]).Sample((shift, scale) =>
        {
            var (a, b) = (GaugeStudy.Of(Published()), GaugeStudy.Of(Published().Select(r => r with { Mm = shift + (scale * r.Mm) })));
            Assert.Equal(scale * a.Grr, b.Grr, 1e-9 * (1 + scale));
            Assert.Equal(a.PercentGrr, b.PercentGrr, 1e-7);
        });
    }

    [Fact]
    public void A_person_who_reads_some_parts_otherwise_shows_as_interaction()
    {
        var readings = Published().Select(r => r.Person == "A" && int.Parse(r.Part, System.Globalization.CultureInfo.InvariantCulture) % 2 == 0 ? r with { Mm = r.Mm + 1 } : r);
        var s = GaugeStudy.Of(readings);
        Assert.True(s.InteractionP < 0.01 && s.Interaction > 0.2, $"{s}");
        Assert.True(s.Grr > s.Ev);
    }

    [Fact]
    public void One_person_alone_shows_the_repeatability()
    {
        var s = GaugeStudy.Of(Published().Where(r => r.Person == "A"));
        Assert.Equal((0, 1), (s.Av, s.Persons));
        Assert.InRange(s.Ev, 0.05, 0.3);
    }

    [Fact]
    public void A_study_with_gaps_names_what_to_read_again()
    {
        Assert.Contains("\"3\" was read 2 times by \"B\"", Refused(r => r is { Part: "3", Person: "B" }, 1), StringComparison.Ordinal);
        Assert.Contains("twice at least", Refused(r => r is { Part: "3", Person: "B" }, 2), StringComparison.Ordinal);
        Assert.Contains("two settings", Assert.Throws<ArgumentException>(() => GaugeStudy.Of(Published().Where(r => r.Part == "1"))).Message, StringComparison.Ordinal);

        static string Refused(Func<StudyReading, bool> which, int left)
        {
            var gone = Published().Where(which).Take(left).ToList();
            return Assert.Throws<ArgumentException>(() => GaugeStudy.Of(Published().Where(r => !gone.Contains(r)))).Message;
        }
    }

    [Fact]
    public void A_study_in_the_book_teaches_the_scatter_and_moves_no_height()
    {
        static string Read(int setting, double mm) => HeightBook.Gauge(mm, mm + 0.2, FormattableString.Invariant($",\"study\":\"may\",\"setting\":\"{setting}\""));
        string[] study = [.. Enumerable.Range(0, 8).SelectMany(i => new[] { Read(i, 4 + i), Read(i, 4 + i + 0.01) })];
        string[] book = [HeightBook.Gauge(5, 5), .. study];
        var b = HeightBook.Belief(book);
        Assert.Equal(5, b.BenchMm(0).Mean, 0.01);
        Assert.True(b.GaugeSdMm.Mean < 0.02, $"{b.GaugeSdMm}");
        var s = GaugeStudy.Of(GaugeStudy.Readings(HeightBook.Entries(book), "may"));
        Assert.Equal((16, 1, 2), (s.Parts, s.Persons, s.Trials));
        Assert.Equal(0.01 / Math.Sqrt(2), s.Ev, 1e-9);
    }

    [Fact]
    public void How_close_a_setting_can_honestly_be_is_that_of_the_worked_example()
    {
        Assert.Equal(0.038, HonestTolerance.Mm(0.035, 3), 0.0005);
        Assert.Equal(0.063, HonestTolerance.Mm(0.035, 1), 0.0005);
        Gen.Select(Gen.Double[0.005, 0.2], Gen.Int[1, 10]).Sample((ev, n) => Assert.True(HonestTolerance.Mm(ev, n + 1) < HonestTolerance.Mm(ev, n)));
        Assert.Throws<ArgumentOutOfRangeException>(() => HonestTolerance.Mm(0.03, 0));
    }
}
