using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Weather;

/// <summary>Fetching from a server of our own on this machine, in the documented form, and with its faults.</summary>
public sealed class WeatherServiceTests
{
    private const string Whole = """{"daily_units":{"temperature_2m_max":"°C","precipitation_sum":"mm"},"daily":{"time":["2026-05-01","2026-05-02"],"temperature_2m_max":[15.1,null],"precipitation_sum":[0.0,2.4]}}""";

    [Fact]
    public async Task It_asks_in_the_documented_form_and_sends_no_more_than_it_must()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 0));
        var days = await Fetch(server);
        Assert.Equal(2, days.Count);
        var query = Assert.Single(server.Asked);
        foreach (var part in (string[])["latitude=51.46", "longitude=-0.98", "timezone=Europe%2FLondon", "past_days=14", "forecast_days=10", "wind_speed_unit=ms", "temperature_2m_min", "precipitation_sum"])
            Assert.Contains(part, query, StringComparison.Ordinal);
        Assert.DoesNotContain("51.4567", query, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_fails_at_first_is_asked_again()
    {
        using var server = new LocalServer((n, _) => n < 3 ? (500, "busy", 0) : (200, Whole, 0));
        Assert.Equal(2, (await Fetch(server)).Count);
        Assert.Equal(3, server.Asked.Count);
    }

    [Fact]
    public async Task A_server_that_goes_on_failing_is_told_of()
    {
        using var server = new LocalServer((_, _) => (503, "", 0));
        var fault = await Assert.ThrowsAsync<WeatherException>(() => Fetch(server));
        Assert.Contains("503", fault.Message, StringComparison.Ordinal);
        Assert.Equal(1 + WeatherService.Retries, server.Asked.Count);
    }

    [Fact]
    public async Task A_slow_server_is_given_up()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 5000));
        Assert.Contains("in time", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server, tryMs: 100))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"daily_units":{"temperature_2m_max":"°C"},"daily":{"time":["2026-05-01","2026-05-02"],"temperature_2m_max":[15.1""", "cut off")]
    [InlineData("""{"daily_units":{"precipitation_sum":"pints"},"daily":{"time":["2026-05-01"],"precipitation_sum":[1]}}""", "pints")]
    [InlineData("""<html>""", "cut off")]
    public async Task An_answer_that_cannot_be_read_is_not_kept(string body, string says)
    {
        using var server = new LocalServer((_, _) => (200, body, 0));
        Assert.Contains(says, (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Single(server.Asked);
    }

    [Fact]
    public async Task A_refusal_in_words_is_passed_on_and_not_tried_again()
    {
        using var server = new LocalServer((_, _) => (400, """{"error":true,"reason":"Latitude must be in range"}""", 0));
        Assert.Contains("Latitude must be in range", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Single(server.Asked);
    }

    [Fact]
    public async Task An_answer_shorter_than_it_says_is_called_truncated()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 0)) { Announced = Whole.Length + 500 };
        Assert.Contains("truncated", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Equal(1 + WeatherService.Retries, server.Asked.Count);
    }

    [Fact]
    public async Task An_answer_in_pieces_is_read()
    {
        using var server = new LocalServer((_, _) => (200, Whole, 0)) { Pieces = 7 };
        Assert.Equal(2, (await Fetch(server)).Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1 << 16)]
    public async Task An_answer_far_larger_than_weather_is_not_read_to_its_end(int pieces)
    {
        using var server = new LocalServer((_, _) => (200, new string(' ', WeatherService.LargestAnswer + 1), 0)) { Pieces = pieces };
        Assert.Contains("larger", (await Assert.ThrowsAsync<WeatherException>(() => Fetch(server))).Message, StringComparison.Ordinal);
        Assert.Single(server.Asked);
    }

    [Fact]
    public async Task Nobody_at_home_is_told_of()
    {
        using var client = new HttpClient();
        var service = new WeatherService(client, TimeSpan.FromSeconds(5), TimeSpan.FromMilliseconds(1));
        var fault = await Assert.ThrowsAsync<WeatherException>(() => service.Fetch(new(new("http://127.0.0.1:1/v1/forecast"), 51, 0, null, 1, 1), TestContext.Current.CancellationToken));
        Assert.Contains("cannot be reached", fault.Message, StringComparison.Ordinal);
    }

    private static async Task<WeatherTable> Fetch(LocalServer server, int tryMs = 5000)
    {
        using var client = new HttpClient();
        var service = new WeatherService(client, TimeSpan.FromMilliseconds(tryMs), TimeSpan.FromMilliseconds(1));
        return await service.Fetch(new(server.Address, 51.4567, -0.98, "Europe/London", 14, 10), TestContext.Current.CancellationToken);
    }
}
