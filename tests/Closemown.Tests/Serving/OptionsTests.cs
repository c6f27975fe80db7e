using Closemown.Serving;
using Xunit;

namespace Closemown.Tests.Serving;

/// <summary>What the command line hands to the server arrives as it was.</summary>
public sealed class OptionsTests
{
    [Fact]
    public void Options_go_over_as_one_word()
    {
        var told = new ServeOptions
        {
            Book = "/home/someone/with \"quotes\" and ü/book.closemown",
            Folder = "/settings",
            Port = 0,
            Open = true,
            Lan = true,
            PlainHttp = true,
            Addresses = ["192.168.1.20", "10.0.0.1"],
            Log = true,
            Json = true,
            TimeOfTheBook = true,
            Called = "./closemown",
            PriceOfMinute = 2.5,
            Words = "uk",
            Gap = "thou",
            Height = "fraction",
            DecimalSign = "comma",
            Limits = new ServeLimits { RequestBytes = 1000, RequestLines = 2, RequestPixels = 10_000, RequestsPerSecond = 3 },
        };
        var read = ServeOptions.Read(told.ToJson());
        Assert.Equal(told with { Addresses = [] }, read with { Addresses = [] });
        Assert.Equal(told.Addresses, read.Addresses);
    }

    [Fact]
    public void Defaults_are_these()
    {
        var usual = new ServeOptions { Book = ":memory:" };
        Assert.Equal((5180, false, false), (usual.Port, usual.Lan, usual.PlainHttp));
        Assert.Equal((4_000_000L, 2000, 24_000_000L, 50), (usual.Limits.RequestBytes, usual.Limits.RequestLines, usual.Limits.RequestPixels, usual.Limits.RequestsPerSecond));
    }
}
