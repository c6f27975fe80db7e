using System.Net;
using System.Text;
using Closemown.Fuzzing;
using Closemown.Serving;
using Closemown.Tests.Web;
using Xunit;

namespace Closemown.Tests.Hard;

/// <summary>The server answers whatever is sent, with a page or a fault, never with one of its own.</summary>
public sealed class ServerAnswersAllTests
{
    private static readonly string[] Pages = ["/", "/steel", "/height", "/turf", "/plan", "/book", "/bench", "/after", "/card", "/score", "/enter?kind=mow"];
    private static readonly string[] Twins = ["/today.json", "/steel.json", "/height.json", "/turf.json", "/plan.json", "/plan.ics", "/book.json?limit=5"];

    public static TheoryData<string> Names => [.. HardLines.Names.Select(Uri.EscapeDataString)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task F2_F10_F31_Every_kind_question_and_page_with_a_bad_name_is_answered(string escaped)
    {
        var name = Uri.UnescapeDataString(escaped);
        await using var bench = await ServerBench.Start(o => o with { Limits = new ServeLimits { RequestsPerSecond = 100_000 } });
        string[] lines = [.. HardLines.Named(name)];
        using (var entered = await bench.Enter(string.Join('\n', lines)))
        {
            var answers = (await Text(entered)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal(lines.Length, answers.Length);
            Assert.All(answers, a => Laws.Answer(a));
        }
        foreach (var question in HardLines.Asked(name))
        {
            using var asked = new StringContent(question, Encoding.UTF8, "application/json");
            using var answer = await bench.Machine.PostAsync("/ask", asked, TestContext.Current.CancellationToken);
            Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError, $"{question} {answer.StatusCode}");
            Laws.Answer(await Text(answer));
        }
        foreach (var page in Pages.Concat(Twins))
        {
            foreach (var way in (string[])[page, $"{page}{(page.Contains('?', StringComparison.Ordinal) ? '&' : '?')}unit={escaped}&area={escaped}&date=9999-12-31&from=9999-12-31&benchMm={escaped}&cutMm=1e308"])
            {
                using var answer = await bench.Machine.GetAsync(way, TestContext.Current.CancellationToken);
                Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError, $"{way} {answer.StatusCode}");
            }
        }
        using var health = await bench.Machine.GetAsync("/health", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
    }

    private static Task<string> Text(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
}
