using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>What is odd is asked about before it is taken, and taken where the person stands by it.</summary>
public sealed class ContextQuestionTests
{
    private const string Started = """{"kind":"area","area":"green","grass":"cool","at":"2026-05-01T09:00:00Z"}""";

    [Theory]
    [InlineData("""{"kind":"canopy","area":"green","mm":45,"when":"before","at":"2026-05-03T09:00:00Z"}""", "mm", "It stood at 4.5 mm a day or less before, and this is 45 mm.")]
    [InlineData("""{"kind":"canopy","area":"green","mm":[4.5,45,4.5],"when":"before","at":"2026-05-03T09:00:00Z"}""", "mm", "45 mm")]
    [InlineData("""{"kind":"canopy","area":"green","mm":1.5,"when":"after","at":"2026-05-03T09:00:00Z"}""", "mm", "less than half of the 4.5 mm")]
    [InlineData("""{"kind":"feed","area":"green","nGm2":15}""", "nGm2", "given at once")]
    [InlineData("""{"kind":"work","what":"topdress","area":"green","kgM2":10}""", "kgM2", "given at once")]
    [InlineData("""{"kind":"water","area":"green","mm":60}""", "mm", "given at once")]
    [InlineData("""{"kind":"clicks","unit":"mower","left":4,"right":0}""", "left", "at once")]
    [InlineData("""{"kind":"clicks","unit":"mower","left":0,"right":-4}""", "right", "at once")]
    [InlineData("""{"kind":"weather","area":"green","date":"2026-05-02","tMinC":3,"tMaxC":55}""", "tMaxC", "55 °C")]
    [InlineData("""{"kind":"weather","area":"green","date":"2026-05-02","tMinC":-30,"tMaxC":5}""", "tMinC", "-30")]
    public void F23_F29_What_is_odd_is_asked_and_taken_when_confirmed(string line, string field, string says)
    {
        var talk = Talk.After(Started, """{"kind":"canopy","area":"green","mm":4.5,"when":"after","at":"2026-05-02T09:00:00Z"}""");
        var fault = talk.Fault(line);
        Assert.Equal(("implausible", field), (fault.Code, fault.Field));
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
        talk.Did(line[..^1] + $",\"confirmed\":[\"{field}\"]}}");
    }

    [Fact]
    public void F23_A_least_temperature_above_the_greatest_is_refused_with_the_remedy()
    {
        var fault = Talk.After(Started).Fault("""{"kind":"weather","area":"green","date":"2026-05-02","tMinC":15,"tMaxC":4}""");
        Assert.Equal(("bad-value", "tMinC", "The smaller comes first: 4..15."), (fault.Code, fault.Field, fault.Remedy));
    }

    [Theory]
    [InlineData("""{"kind":"canopy","area":"green","mm":[2,1.5,2,2.2],"when":"after","at":"2026-05-03T09:00:00Z"}""")]
    [InlineData("""{"kind":"canopy","area":"green","mm":9,"when":"before","at":"2026-05-03T09:00:00Z"}""")]
    [InlineData("""{"kind":"canopy","area":"green","mm":45,"when":"before","at":"2026-05-12T09:00:00Z"}""")]
    [InlineData("""{"kind":"canopy","area":"green","lowMm":2,"highMm":60,"when":"before","at":"2026-05-03T09:00:00Z"}""")]
    [InlineData("""{"kind":"clicks","unit":"mower","left":3,"right":-3}""")]
    [InlineData("""{"kind":"feed","area":"green","nGm2":9}""")]
    [InlineData("""{"kind":"work","what":"topdress","area":"green","kgM2":5}""")]
    public void F29_What_may_well_be_is_taken_without_a_question(string line) =>
        Talk.After(Started, """{"kind":"canopy","area":"green","mm":2,"when":"after","at":"2026-05-02T09:00:00Z"}""").Did(line);

    [Fact]
    public void F29_The_same_entry_again_is_the_same_entry()
    {
        const string Line = """{"id":"019e0000-0000-7000-8000-00000000000a","kind":"canopy","area":"green","mm":45,"when":"before","at":"2026-05-03T09:00:00Z"}""";
        var talk = Talk.After(Started, Line);
        talk.Did("""{"kind":"canopy","area":"green","mm":4.5,"when":"after","at":"2026-05-02T09:00:00Z"}""", Line);
    }
}
