using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>Books in which much, little or nothing is known of a unit, and what a person answers to a step.</summary>
internal static class BenchStates
{
    public const string GoodFit = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""";
    public const string Cuts = """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts"}""";
    public const string Folds = """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""";
    public const string Middle = """{"kind":"paper-cut","left":"cuts","centre":"folds","right":"cuts"}""";
    public const string Untouched = """{"kind":"contact","left":"none","right":"none"}""";
    public const string Touching = """{"kind":"contact","left":"light","right":"light"}""";

    /// <summary>Books in which much, little or nothing is known of the unit.</summary>
    public static TheoryData<string> All => new("new", "rebuilt", "known", "worn", "turned");

    public static Piped In(string state)
    {
        var pipe = new Piped();
        switch (state)
        {
            case "rebuilt":
                pipe.Say(GoodFit, """{"kind":"rebuild","what":["bearings"]}""", GoodFit);
                break;
            case "known":
                pipe.Say(GoodFit);
                for (var week = 0; week < 6; week++)
                    pipe.Say(Touching, Cuts, """{"kind":"mow","hours":1}""", """{"kind":"swath","left":"clean","centre":"clean","right":"clean"}""");
                break;
            case "worn":
                pipe.Say(GoodFit);
                for (var week = 0; week < 4; week++)
                    pipe.Say(Untouched, Folds, """{"kind":"clicks","left":1,"right":1}""", Touching, """{"kind":"paper-cut","left":"nicks","centre":"nicks","right":"nicks"}""", """{"kind":"mow","hours":2}""");
                break;
            case "turned":
                pipe.Say(GoodFit, Folds, """{"kind":"clicks","left":2,"right":2}""", Untouched, """{"kind":"clicks","left":2,"right":2}""");
                break;
        }
        return pipe;
    }

    /// <summary>The entry that says a step which is no check was done.</summary>
    public static string Answer(JsonNode step) => (string)step["do"]! switch
    {
        "fit" => GoodFit,
        "clicks" => $$"""{"kind":"clicks","left":{{(int?)step["left"] ?? 0}},"right":{{(int?)step["right"] ?? 0}}}""",
        "lap" => $$"""{"kind":"lap","minutes":{{((double)step["minutes"]!).ToString(System.Globalization.CultureInfo.InvariantCulture)}}}""",
        "stone" => $$"""{"kind":"stone","what":"{{step["what"]}}"}""",
        "grind" => """{"kind":"grind","what":"both"}""",
        "repair" => """{"kind":"rebuild"}""",
        "straightedge" => """{"kind":"measure","what":"straightedge","centre":0.02}""",
        "knife-screws" => """{"kind":"service","what":"knife-screws"}""",
        "strip" => """{"kind":"strip","um":70}""",
        "square-up" => """{"kind":"square-up","stripUm":80}""",
        var other => throw new InvalidOperationException(other),
    };
}
