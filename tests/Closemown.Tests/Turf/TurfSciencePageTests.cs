using Closemown.Tests.Entries;
using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>docs/turf-science.md names every formula there is.</summary>
public sealed class TurfSciencePageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(DocsFolder.Find(), "turf-science.md"));

    /// <summary>What is no published formula: docs/model-turf.md and docs/plan.md tell of it.</summary>
    private static readonly Type[] Models =
    [
        typeof(AreaDefaults), typeof(CanopyLayout), typeof(DiseaseRisk), typeof(FrostOutlook), typeof(GroundState), typeof(GrowingMonths),
        typeof(PlanLimits), typeof(PersonDays), typeof(TurfFutures), typeof(CivilDay), typeof(MowingPlanner),
    ];

    /// <summary>Formulas: static classes, and records that reckon.</summary>
    public static TheoryData<string> Formulas =>
        [.. typeof(Ranged).Assembly.GetExportedTypes().Where(t => t is { IsAbstract: true, IsSealed: true } && !Models.Contains(t)).Select(t => t.Name),
            nameof(RootZone), nameof(GrowthRegulator), nameof(HueSaturationBrightness), nameof(ReferenceWeather), nameof(Ranged)];

    [Theory]
    [MemberData(nameof(Formulas))]
    public void A_formula_stands_on_the_page(string name) => Assert.Contains($"`{name}`", Page, StringComparison.Ordinal);

    [Fact]
    public void The_page_counts_the_rows_that_there_are() => Assert.Contains($"{CheckRow.All.Count} rows", Page, StringComparison.Ordinal);
}
