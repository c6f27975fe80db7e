using Closemown.Tests.Practice;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>Three rounds of lapping without a better cut end in the file, the grinder or the workshop. Common practice, no source.</summary>
public sealed class LappingInVainTests
{
    private const string Start = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight"}""";
    private const string Light = """{"kind":"contact","left":"light","right":"light"}""";
    private const string Folds = """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""";
    private const string Lap = """{"kind":"lap","minutes":2,"grit":120}""";

    [Fact]
    public void Lapped_three_times_and_not_tried_the_strip_comes_first()
    {
        var pipe = new Piped();
        pipe.Say(Start, Light, Folds, Lap, Lap, Lap, Light);
        Assert.Equal("paper-cut", (string)pipe.Next()["do"]!);
    }

    [Fact]
    public void Lapped_three_times_and_it_still_folds_the_file_comes_next_and_then_the_grinder()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","owns":["strip","grinder"]}""", Start, Light, Folds, Lap, Lap, Lap, Light, Folds);
        Assert.Equal("stone", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"stone","what":"face"}""", Light, Lap, Lap, Lap, Light, Folds);
        Assert.Equal("grind", (string)pipe.Next()["do"]!);
    }

    [Fact]
    public void Without_a_grinder_it_is_sent_away_and_who_declines_that_is_not_asked_again()
    {
        var pipe = new Piped();
        pipe.Say(Start, Light, Folds, """{"kind":"stone","what":"face"}""", Light, Lap, Lap, Lap, Light, Folds);
        var step = pipe.Next();
        Assert.Equal("repair", (string)step["do"]!);
        pipe.Say($$"""{"kind":"decline","advice":"{{(string)step["advice"]!}}"}""");
        Assert.NotEqual("repair", (string)pipe.Next()["do"]!);
    }

    [Fact]
    public void A_better_cut_after_a_lap_starts_the_count_again()
    {
        var pipe = new Piped();
        pipe.Say(Start, Light, Folds, Lap, Lap, Lap, Light, """{"kind":"paper-cut","left":"nicks","centre":"nicks","right":"nicks"}""");
        Assert.DoesNotContain((string)pipe.Next()["do"]!, (string[])["stone", "repair"]);
    }

    [Fact]
    public void A_bad_fit_stays_bad_however_often_the_repair_is_declined()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"fit","playLeft":"knocks"}""");
        var step = pipe.Next();
        Assert.Equal("repair", (string)step["do"]!);
        pipe.Say($$"""{"kind":"decline","advice":"{{(string)step["advice"]!}}"}""");
        Assert.Equal("repair", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"rebuild","what":["bearings"]}""");
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
    }
}
