using System.Text;
using Closemown.Entries;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Headers as spreadsheets write them.</summary>
public sealed class HeaderTests
{
    [Theory]
    [InlineData("date,\"Site, north\",\"Max, temp (°C)\",\"Rain (mm)\"\n2026-05-01,a,15,3\n")]
    [InlineData("\"Readings; my garden, 2026\"\ndate;\"Note, any\";\"Max temp (°C)\";\"Rain (mm)\"\n2026-05-01;\"a, b\";15,0;3,0\n")]
    [InlineData("\n\ndate\tMax temp (°C)\tRain (mm)\n2026-05-01\t15\t3\n")]
    [InlineData("\"date\",\"said \"\"dry\"\", or not\",\"Max temp (°C)\",\"Rain (mm)\"\n2026-05-01,\"two\nlines\",15,3\n")]
    public void Commas_in_quotes_part_no_columns(string text)
    {
        var day = Assert.Single(Read(text, new()).Days.Entries("green", "x", null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero)));
        Assert.Equal(("2026-05-01", 15.0, 3.0), (day[WeatherEntry.Date], day[WeatherEntry.TMaxC], day[WeatherEntry.RainMm]));
    }

    [Fact]
    public void A_column_with_a_comma_can_be_told()
    {
        var read = Read("date,\"Out, top\"\n2026-05-01,59\n", new() { Columns = new Dictionary<string, string> { ["tMaxC"] = "Out, top:F" } });
        Assert.Equal(15, read.Days.Entries("green", "x", null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero)).Single()[WeatherEntry.TMaxC]);
    }

    [Fact]
    public void A_line_is_told_as_it_is_counted_in_the_file()
    {
        var read = Read("My station\n\ndate,Rain (mm)\n2026-05-01,3\nsoon,3\n", new());
        Assert.Equal((1, 5), read.Days.Dropped["no day"]);
    }

    private static WeatherFileRead Read(string text, WeatherFileOptions options) => WeatherFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), options);
}
