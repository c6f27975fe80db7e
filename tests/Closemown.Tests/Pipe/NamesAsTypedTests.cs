using Closemown.Advice;
using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>Names that people give stand in sentences as they were typed, whatever is in them.</summary>
public sealed class NamesAsTypedTests
{
    public static TheoryData<string> Names => ["g{b", "g}b", "{reel}", "{reel} x", "{mm:4}", "{", "{{", "}{", "{um:", "\"quoted\"", "it's", "a\\b", "<b>"];

    [Theory]
    [MemberData(nameof(Names))]
    public void F10_F31_A_name_in_a_sentence_comes_out_as_typed(string name)
    {
        var said = new Phrasing(WritingStyle.British).Say($"The {{reel}} on {Phrasing.AsTyped(name)}: {HeightSpeech.Mm(4.25)}.");
        Assert.Equal($"The cylinder on {name}: 4.25 mm.", said);
    }

    [Theory]
    [InlineData("{nothing known}")]
    [InlineData("an open { brace")]
    [InlineData("{mm:x} and {um:}")]
    [InlineData("}")]
    public void F31_What_is_no_place_is_left_as_text(string sentence) => Assert.Equal(sentence, Phrasing.Plain.Say(sentence));

    [Theory]
    [MemberData(nameof(Names))]
    public void F10_F31_No_question_about_an_area_or_unit_of_such_a_name_ends_the_pipe(string name)
    {
        var text = System.Text.Json.JsonSerializer.Serialize(name);
        var talk = Talk.After(
            $$"""{"kind":"unit","unit":{{text}},"blades":10,"at":"2026-05-01T09:00:00Z"}""",
            $$"""{"kind":"area","area":{{text}},"grass":"cool","species":{{text}},"at":"2026-05-01T09:01:00Z"}""",
            $$"""{"kind":"gauge","unit":{{text}},"leftMm":5.1,"rightMm":5.2,"at":"2026-05-01T09:02:00Z"}""",
            $$"""{"kind":"mow","unit":{{text}},"area":{{text}},"hours":0.3,"at":"2026-05-01T10:00:00Z"}""",
            $$"""{"kind":"canopy","area":{{text}},"mm":[5,5.2,5.1],"when":"after","at":"2026-05-01T11:00:00Z"}""");
        foreach (var ask in (string[])["next", "steel", "height", "turf", "plan", "canopy", "today", "score", "step-down"])
        {
            talk.Did($$"""{"ask":"{{ask}}","unit":{{text}},"area":{{text}},"cutMm":4.5}""");
        }
        var step = talk.Did($$"""{"ask":"next","unit":{{text}},"aim":{"cutMm":4.5,"area":{{text}} } }""")["next"]!;
        Assert.Contains(Talk.Texts(step), t => t.Contains($" on {name} the gauge should read", StringComparison.Ordinal));
        talk.Did($$"""{"ask":"why","id":"{{(string)step["advice"]!}}"}""");
    }
}
