using System.Globalization;
using System.Net;
using System.Text;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace Closemown.Weather;

/// <summary>What is asked of the service.</summary>
/// <param name="Url">Its address, in Open-Meteo's documented form.</param>
/// <param name="LatitudeDeg">Latitude; two decimals are sent, about a kilometre.</param>
/// <param name="LongitudeDeg">Longitude; the same.</param>
/// <param name="Zone">Name of the time zone, or null for UTC days.</param>
/// <param name="PastDays">Days before today, 0 to 92.</param>
/// <param name="AheadDays">Today and days ahead, 1 to 16.</param>
public sealed record WeatherAsk(Uri Url, double LatitudeDeg, double LongitudeDeg, string? Zone, int PastDays, int AheadDays);

/// <summary>Fetches days from a public weather service. Only ever called when the person has switched it on.</summary>
/// <remarks>A try is given up after some seconds and made again a few times where the service is busy or the line breaks; what comes in pieces is not kept.</remarks>
public sealed class WeatherService(HttpClient client, TimeSpan? tryFor = null, TimeSpan? waitFirst = null)
{
    /// <summary>Tries after the first.</summary>
    public const int Retries = 3;

    /// <summary>The longest answer taken, bytes.</summary>
    public const int LargestAnswer = 4_000_000;

    private readonly ResiliencePipeline pipeline = new ResiliencePipelineBuilder()
        .AddRetry(new RetryStrategyOptions
        {
            MaxRetryAttempts = Retries,
            Delay = waitFirst ?? TimeSpan.FromSeconds(1),
            BackoffType = DelayBackoffType.Exponential,
            ShouldHandle = new PredicateBuilder().Handle<HttpRequestException>(e => e.StatusCode is null or HttpStatusCode.TooManyRequests or >= HttpStatusCode.InternalServerError).Handle<TimeoutRejectedException>().Handle<IOException>(),
        })
        .AddTimeout(tryFor ?? TimeSpan.FromSeconds(10))
        .Build();

    /// <summary>Asks for the days.</summary>
    /// <exception cref="WeatherException">The service does not answer, refuses, or answers in a way that cannot be read: nothing is kept then.</exception>
    public async Task<WeatherTable> Fetch(WeatherAsk ask, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ask);
        string json;
        try
        {
            json = await pipeline.ExecuteAsync(async c => await Get(Address(ask), c).ConfigureAwait(false), cancel).ConfigureAwait(false);
        }
        catch (TimeoutRejectedException)
        {
            throw new WeatherException($"The weather service at {ask.Url.Host} did not answer in time.", "Try again later; a weather file or typing the day by hand does as well.");
        }
        catch (HttpRequestException e)
        {
            throw new WeatherException(e.StatusCode is { } s ? $"The weather service at {ask.Url.Host} answered {(int)s}." : $"The weather service at {ask.Url.Host} cannot be reached.", "Try again later, or check weatherUrl in the settings.");
        }
        catch (IOException)
        {
            throw new WeatherException($"The answer of {ask.Url.Host} is truncated: it broke off before its end.", "Try again later; nothing was kept.");
        }
        return OpenMeteoJson.Read(json.TrimStart('\uFEFF'));
    }

    private async Task<string> Get(Uri address, CancellationToken cancel)
    {
        using var answer = await client.GetAsync(address, HttpCompletionOption.ResponseHeadersRead, cancel).ConfigureAwait(false);
        // A refusal in words says more than its number.
        if (answer.StatusCode != HttpStatusCode.BadRequest) answer.EnsureSuccessStatusCode();
        if (answer.Content.Headers.ContentLength > LargestAnswer) throw TooLarge();
        await using var from = await answer.Content.ReadAsStreamAsync(cancel).ConfigureAwait(false);
        using var held = new MemoryStream();
        var piece = new byte[1 << 16];
        // Counted while it comes: an answer in pieces does not say its length beforehand.
        while (await from.ReadAsync(piece, cancel).ConfigureAwait(false) is > 0 and var n)
        {
            if (held.Length + n > LargestAnswer) throw TooLarge();
            held.Write(piece, 0, n);
        }
        return Encoding.UTF8.GetString(held.GetBuffer(), 0, (int)held.Length);
    }

    private static WeatherException TooLarge() => new("The answer is far larger than weather is.", "Check weatherUrl in the settings.");

    private static Uri Address(WeatherAsk ask)
    {
        string N(double x) => Math.Round(x, 2).ToString(CultureInfo.InvariantCulture);
        var query = $"latitude={N(ask.LatitudeDeg)}&longitude={N(ask.LongitudeDeg)}&daily={string.Join(',', OpenMeteoNames.All)}&wind_speed_unit=ms&timezone={Uri.EscapeDataString(ask.Zone ?? "GMT")}"
            + $"&past_days={ask.PastDays.ToString(CultureInfo.InvariantCulture)}&forecast_days={ask.AheadDays.ToString(CultureInfo.InvariantCulture)}";
        return new UriBuilder(ask.Url) { Query = query }.Uri;
    }
}
