using Closemown.Entries;
using Closemown.Tests.Entries;
using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>The demo's weather is what its seeded generator makes, and nothing else.</summary>
public sealed class FerncombeWeatherTests
{
    private static readonly string Kept = Path.Combine(Path.GetDirectoryName(DocsFolder.Find())!, "demo", "ferncombe-weather.jsonl");

    [Fact]
    public void The_file_is_what_the_generator_makes()
    {
        var made = string.Join('\n', FerncombeWeather.Lines()) + "\n";
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(Kept, made);
        Assert.Equal(made, File.ReadAllText(Kept).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void The_file_of_care_is_what_the_generator_makes_and_reads_whole()
    {
        var folder = Path.GetDirectoryName(Kept)!;
        string[] lines = [.. FerncombeCare.Lines(FerncombeWeather.Lines(), File.ReadLines(Path.Combine(folder, "ferncombe.jsonl")))];
        var (kept, made) = (Path.Combine(folder, "ferncombe-care.jsonl"), string.Join('\n', lines) + "\n");
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(kept, made);
        Assert.Equal(made, File.ReadAllText(kept).ReplaceLineEndings("\n"));
        foreach (var line in lines) Assert.Empty(EntryReader.Read(line, EntryContext.Whole, out _));
    }

    [Fact]
    public void It_is_two_whole_seasons_without_a_gap_and_a_week_of_forecast()
    {
        var entries = new List<Entry>();
        foreach (var line in FerncombeWeather.Lines())
        {
            Assert.Empty(EntryReader.Read(line, EntryContext.Whole, out var entry));
            entries.Add(entry!);
        }
        var record = WeatherRecord.Of("green", entries);
        Assert.Empty(record.Gaps());
        Assert.Equal((new DateOnly(2025, 3, 1), new DateOnly(2026, 8, 22), new DateOnly(2026, 8, 29)), (record.First!.Value, record.LastRecorded!.Value, record.Last!.Value));
        Assert.Contains(record.Days, d => d.TMinC < -2);
        Assert.Contains(record.Days, d => d.TMaxC > 25);
    }
}
