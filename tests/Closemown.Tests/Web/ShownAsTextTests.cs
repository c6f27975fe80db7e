using System.Net;
using System.Reflection;
using Closemown.Pages;
using Microsoft.AspNetCore.Components;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Whatever people type is shown as text on every page, never taken for the page's own markup.</summary>
public sealed class ShownAsTextTests
{
    private const string Bad = "<script>alert('x')</script>\"><img src=x onerror=alert(1)>";
    private const string Name = Bad;

    private static readonly (string, string)[][] Entries =
    [
        [("kind", "unit"), ("unit", Name), ("blades", "10")],
        [("kind", "strip"), ("unit", Name), ("um", "80"), ("name", Bad)],
        [("kind", "paper-cut"), ("unit", Name), ("left", "folds"), ("centre", "folds"), ("right", "folds"), ("blade", Bad), ("by", Name), ("note", Bad)],
        [("kind", "gauge"), ("unit", Name), ("leftMm", "5"), ("rightMm", "5"), ("study", Bad), ("setting", Bad)],
        [("kind", "rebuild"), ("unit", Name), ("what", Bad)],
        [("kind", "area"), ("area", Name), ("grass", "cool"), ("species", Bad), ("m2", "100")],
        [("kind", "mow"), ("unit", Name), ("area", Name), ("hours", "0.3"), ("note", Bad)],
        [("kind", "canopy"), ("area", Name), ("mm", "6"), ("when", "before"), ("by", Name)],
        [("kind", "feed"), ("area", Name), ("nGm2", "1"), ("label", Bad)],
        [("kind", "treat"), ("area", Name), ("what", Bad), ("label", Bad)],
        [("kind", "wish"), ("area", Name), ("cutMm", "4")],
    ];

    [Fact]
    public async Task Markup_typed_into_any_field_is_shown_as_text_on_every_page()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        foreach (var fields in Entries)
        {
            var answer = await visitor.Enter(fields);
            Assert.True((bool)answer["ok"]!, answer.ToJsonString());
            var page = await visitor.Page($"/look?written={(string)answer["id"]!}");
            Inert(page);
            Assert.Contains("Written down", page, StringComparison.Ordinal);
            Inert(await visitor.Page($"/look?back={Uri.EscapeDataString(Bad)}"));
        }
        var paths = typeof(App).Assembly.GetTypes().SelectMany(t => t.GetCustomAttributes<RouteAttribute>()).Select(r => r.Template).Where(t => !t.Contains('{', StringComparison.Ordinal)).ToList();
        Assert.Contains("/look", paths);
        foreach (var path in paths)
        {
            foreach (var query in (string[])["", $"?unit={Uri.EscapeDataString(Name)}&area={Uri.EscapeDataString(Name)}"])
            {
                using var answer = await visitor.Client.GetAsync(path + query, TestContext.Current.CancellationToken);
                Inert(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            }
        }
    }

    [Fact]
    public async Task Markup_in_a_form_that_is_refused_is_shown_as_text()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        foreach (var fields in (IEnumerable<(string, string)[]>)[.. Entries, [("kind", Bad)], [("kind", "mow"), (Bad, Bad)], [("kind", "paper-cut"), ("left", Bad)], [("kind", "mow"), ("hours", Bad), ("hours.in", Bad)], [("kind", "mow"), ("confirm", Bad), ("instead", Bad + "=1")]])
        {
            var (status, page, _) = await visitor.Write([.. fields, ("id", Bad), ("at", Bad), ("voids", Bad)]);
            Assert.Equal(HttpStatusCode.BadRequest, status);
            Inert(page);
        }
    }

    private static void Inert(string page)
    {
        Assert.DoesNotContain("<script>alert", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", page, StringComparison.OrdinalIgnoreCase);
    }
}
