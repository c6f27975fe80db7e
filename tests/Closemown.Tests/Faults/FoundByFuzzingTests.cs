using System.Text;
using Closemown.Advice;
using Closemown.Tests.Practice;
using Closemown.Weather;
using Xunit;

namespace Closemown.Tests.Faults;

/// <summary>Inputs that fuzzing found to end in a fault of the program.</summary>
public sealed class FoundByFuzzingTests
{
    [Fact]
    public void Turf_that_stood_at_its_ceiling_for_years_takes_a_height_again()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"mow","area":"green","hours":1,"at":"1926-05-01T08:00:00Z"}""", """{"kind":"canopy","area":"green","mm":6.5,"when":"after","at":"2026-05-01T08:00:00Z"}""");
        Assert.Equal(6.5, (double)pipe.Say("""{"ask":"turf","area":"green","date":"2026-05-01"}""")["turf"]!["canopyMm"]!["mean"]!, 1);
    }

    [Fact]
    public void Half_a_character_in_the_name_of_a_weather_column_is_told_as_broken()
    {
        var file = new MemoryStream(Encoding.ASCII.GetBytes("""{"daily":{"\ud800":[]}}"""));
        Assert.Contains("broken", Assert.Throws<WeatherException>(() => WeatherFile.Read(file, new())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_id_of_an_advice_with_numbers_that_nobody_asks_for_is_none()
    {
        var fields = Convert.ToBase64String(Encoding.UTF8.GetBytes("6\n\n1e308\n5\n.5\n\n")).TrimEnd('=').Replace('+', '.').Replace('/', '_');
        Assert.Null(AdviceId.Read($"height-0-0-{fields}"));
    }
}
