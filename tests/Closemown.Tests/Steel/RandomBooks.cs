using System.Text.Json.Nodes;
using CsCheck;

namespace Closemown.Tests.Steel;

/// <summary>Books of all kinds of entries that concern the steel, made at random.</summary>
internal static class RandomBooks
{
    private static Gen<T> Pick<T>(params T[] from) => Gen.Int[0, from.Length - 1].Select(i => from[i]);

    private static readonly Gen<string> Gap = Pick("cuts", "nicks", "folds", "");
    private static readonly Gen<string> Manner = Pick("", "", "", "\"state\":\"just-run\"", "\"blade\":\"1\"", "\"state\":\"sun\",\"blade\":\"2\"");

    private static Gen<string> Stations(string kind, params string[] words)
    {
        var word = Pick([.. words, ""]);
        return Gen.Select(word, word, word, Pick(words), Manner).Select((l, c, r, some, manner) =>
            Fields(kind, manner, ("left", l), ("centre", l + c + r == "" ? some : c), ("right", r)));
    }

    private static string Fields(string kind, string more, params (string Name, string Word)[] words) =>
        $$"""{"kind":"{{kind}}"{{string.Concat(words.Where(w => w.Word != "").Select(w => $",\"{w.Name}\":\"{w.Word}\""))}}{{(more == "" ? "" : "," + more)}}}""";

    private static readonly Gen<string> PaperCut = Gen.Select(Gap, Gap, Gap, Manner, Pick("", "", "\"layers\":2", "\"damp\":true", "\"stripUm\":60", "\"stripUm\":100"))
        .Select((l, c, r, manner, more) => Fields("paper-cut", string.Join(",", new[] { manner, more }.Where(t => t != "")), ("left", l + c + r == "" ? "nicks" : l), ("centre", c), ("right", r)));

    private static readonly Gen<string> Feeler = Gen.Select(Gen.Int[1, 20], Gen.Int[1, 10], Gen.Int[0, 2], Pick("left", "centre", "right"))
        .Select((go, more, form, at) => $$"""{"kind":"feeler","{{at}}":{{{form switch { 0 => $"\"goUm\":{go * 10}", 1 => $"\"noGoUm\":{go * 10}", _ => $"\"goUm\":{go * 10},\"noGoUm\":{(go + more) * 10}" }}}} }""");

    private static readonly Gen<string> Clicks = Gen.Select(Gen.Int[-6, 6], Gen.Int[-6, 6]).Select((l, r) => SteelBook.Clicks(l / 2.0, r / 2.0));

    private static readonly Gen<string> Mow = Gen.Select(Gen.Double[0.05, 3], Gen.Bool, Gen.Int[10, 2000]).Select((h, area, m2) => area ? $$"""{"kind":"mow","areaM2":{{m2}}}""" : SteelBook.Mow(h));

    private static readonly Gen<string> Lap = Gen.Select(Pick(0.5, 1, 2, 4), Pick("", ",\"grit\":80", ",\"grit\":120"))
        .Select((m, grit) => FormattableString.Invariant($$"""{"kind":"lap","minutes":{{m}}{{grit}}}"""));

    /// <summary>Changes of the unit's geometry, words and starting values that keep left and right alike.</summary>
    public static readonly Gen<string> Descriptions = Pick(
        """{"kind":"unit","clickUm":17.5}""", """{"kind":"unit","relief":"yes","blades":9}""", """{"kind":"unit","setting":"clear"}""", """{"kind":"unit","adjusterAtMm":[-250,250],"stationAtMm":[-200,0,200]}""",
        """{"kind":"unit","priors":{"openingUmPerHour":[2,1],"clearanceUm":[30,15]}}""", """{"kind":"unit","cleanUm":35,"relief":"no"}""",
        """{"kind":"strip","um":80,"sdUm":3}""", """{"kind":"strip","gsm":55}""", """{"kind":"strip","stackMm":0.6,"layers":10}""", """{"kind":"strip","um":80,"cutsToUm":35,"foldsFromUm":55}""");

    private static readonly Gen<string> Rare = Pick(
        """{"kind":"square-up"}""", """{"kind":"square-up","stripUm":100}""", """{"kind":"stone","what":"face"}""", """{"kind":"stone","what":"ends"}""", """{"kind":"stone","what":"burr"}""",
        """{"kind":"grind","what":"reel"}""", """{"kind":"grind","what":"bedknife"}""", """{"kind":"grind","what":"both"}""",
        """{"kind":"rebuild"}""", """{"kind":"rebuild","newKnife":true}""", """{"kind":"rebuild","newKnife":true,"groundOnBar":true}""",
        """{"kind":"strike"}""", """{"kind":"strike","where":"left"}""", """{"kind":"strike","where":"centre"}""", """{"kind":"strike","where":"right"}""",
        """{"kind":"work","what":"topdress","kgM2":1}""", """{"kind":"work","what":"brush"}""",
        """{"kind":"fit","playLeft":"none","playRight":"felt"}""", """{"kind":"fit","playLeft":"knocks"}""", """{"kind":"gauge","leftMm":5,"rightMm":5.1}""", """{"kind":"screw","leftTurns":0.25}""",
        """{"kind":"locked"}""", """{"kind":"decline","advice":"next-1-abcdef01-x"}""");

    /// <summary>One entry of any kind that a unit's record may hold.</summary>
    public static readonly Gen<string> Entry = Gen.Frequency(
        (5, Stations("contact", "none", "light", "heavy")), (5, PaperCut), (2, Stations("paper-drag", "tight", "slight", "loose")),
        (2, Stations("torch", "none", "thin", "wide")), (2, Stations("swath", "clean", "ragged", "uncut")), (1, Feeler),
        (6, Clicks), (6, Mow), (3, Lap), (2, Descriptions), (3, Rare));

    public static Gen<string[]> OfUpTo(int entries) => Entry.Array[1, entries];

    /// <summary>The same entry with left and right changed over.</summary>
    public static string Mirrored(string body)
    {
        var from = JsonNode.Parse(body)!.AsObject();
        var to = new JsonObject();
        foreach (var (name, value) in from)
        {
            var v = value?.DeepClone();
            if (name is "where" or "trailing") v = Swap((string)v!);
            if (name is "adjusterAtMm" or "stationAtMm") v = new JsonArray([.. v!.AsArray().Reverse().Select(x => (JsonNode)(-(double)x!))]);
            to[name.StartsWith("left", StringComparison.Ordinal) || name.StartsWith("right", StringComparison.Ordinal) ? Changed(name) : name switch { "playLeft" => "playRight", "playRight" => "playLeft", _ => name }] = v;
        }
        return to.ToJsonString();

        static string Swap(string word) => word switch { "left" => "right", "right" => "left", _ => word };

        static string Changed(string name) => name.StartsWith("left", StringComparison.Ordinal) ? "right" + name[4..] : "left" + name[5..];
    }
}
