using System.Net;
using System.Text.Json.Nodes;
using Closemown.Book;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Who enters on a device, chosen once, stands on each entry made there.</summary>
public sealed class ByTests
{
    private static readonly (string, string)[] Mown = [("kind", "mow"), ("unit", "mower"), ("hours", "0.3")];

    private static string? Last(ServerBench bench)
    {
        using var book = BookFile.Open(bench.Book, new BookOptions { ReadOnly = true });
        return book.ReadAll()[^1].Entry.By;
    }

    [Fact]
    public async Task F27_The_name_kept_on_the_device_stands_on_its_entries_and_a_form_that_says_another_wins()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        await visitor.Enter(Mown);
        Assert.Null(Last(bench));
        using (await visitor.Send("/look", false, ("by", " Ann & =\u202EBö\u0007 "), ("gap", "thou"))) { }
        Assert.Contains("value=\"Ann &amp; =B", await visitor.Page("/look"), StringComparison.Ordinal);
        await visitor.Enter(Mown);
        Assert.Equal("Ann & =Bö", Last(bench));
        await visitor.Enter([.. Mown, ("by", "Ben")]);
        Assert.Equal("Ben", Last(bench));
        using var other = new Visitor(bench);
        await other.Enter(Mown);
        Assert.Null(Last(bench));
        using (await visitor.Send("/look", false, ("by", ""), ("gap", "thou"))) { }
        await visitor.Enter(Mown);
        Assert.Null(Last(bench));
    }

    [Fact]
    public async Task F27_A_correction_does_not_change_who_read_it()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        var first = await visitor.Enter(Mown);
        using (await visitor.Send("/look", false, ("by", "Ann"))) { }
        Assert.True((bool)(await visitor.Enter([.. Mown, ("hours", "0.4"), ("voids", (string)first["id"]!)]))["ok"]!);
        Assert.Null(Last(bench));
    }

    [Fact]
    public async Task F27_A_paired_device_goes_by_its_name()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true });
        using var device = bench.Device();
        await ServerBench.Pair(device, bench.NewCode(), "shed phone");
        async Task Send(string path, params (string Name, string Value)[] fields)
        {
            var token = (await device.GetStringAsync("/look", TestContext.Current.CancellationToken)).Split("name=\"form\" value=\"")[1].Split('"')[0];
            using var form = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)).Prepend(KeyValuePair.Create("form", token)));
            using var answer = await device.PostAsync(path, form, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }
        await Send("/enter", Mown);
        Assert.Equal("shed phone", Last(bench));
        await Send("/look", ("by", "Ann"));
        await Send("/enter", Mown);
        Assert.Equal("Ann", Last(bench));
    }
}
