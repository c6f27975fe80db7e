using System.Text;
using Closemown.Entries;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Files with the weather of several places: which one is asked for, never taken as the first.</summary>
public sealed class PlaceTests
{
    private const string Json = """
        [{"latitude":51.5,"longitude":-0.9,"daily_units":{"precipitation_sum":"mm"},"daily":{"time":["2026-05-01"],"precipitation_sum":[1]}},
         {"latitude":48.1,"longitude":11.6,"daily_units":{"precipitation_sum":"mm"},"daily":{"time":["2026-05-01"],"precipitation_sum":[2]}}]
        """;

    private const string Csv = """
        location_id,latitude,longitude,elevation
        0,51.5,-0.9,27.0
        1,48.1,11.6,500.0

        location_id,time,precipitation_sum (mm)
        0,2026-05-01,1
        1,2026-05-01,2
        """;

    [Theory]
    [InlineData(Json)]
    [InlineData(Csv)]
    public void The_one_told_is_read(string text)
    {
        Assert.Equal(1, Rain(text, 1));
        Assert.Equal(2, Rain(text, 2));
    }

    [Theory]
    [InlineData(Json, null, "2 places")]
    [InlineData(Csv, null, "2 is 48.1, 11.6")]
    [InlineData(Json, 3, "no place 3")]
    [InlineData(Csv, 0, "no place 0")]
    [InlineData("[]", null, "no place")]
    public void Several_without_one_named_are_refused(string text, int? place, string says) =>
        Assert.Contains(says, Assert.Throws<WeatherException>(() => Rain(text, place)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_list_of_one_needs_no_name()
    {
        Assert.Equal(3, Rain("""[{"daily_units":{"precipitation_sum":"mm"},"daily":{"time":["2026-05-01"],"precipitation_sum":[3]}}]""", null));
    }

    [Fact]
    public void Whose_data_it_is_comes_with_it()
    {
        Assert.Contains("CC BY 4.0", Read(Json, 1).Attribution, StringComparison.Ordinal);
        Assert.Contains("CC BY 4.0", Read(Csv, 1).Attribution, StringComparison.Ordinal);
        Assert.Null(Read("date,Rain (mm)\n2026-05-01,3\n", null).Attribution);
    }

    private static double? Rain(string text, int? place) => Read(text, place).Days.Entries("green", "x", null, d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero)).Single()[WeatherEntry.RainMm];

    private static WeatherFileRead Read(string text, int? place) => WeatherFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), new() { Place = place });
}
