using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>What people type after add, and what is kept of it. It is Wednesday, 20 May 2026; the book has an area, green, and a unit, mower.</summary>
public sealed class AddFormsTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 20, 10, 0, 0, TimeSpan.Zero);

    public static TheoryData<string, string> Typed => new()
    {
        { "mow 20min green", """{"kind":"mow","hours":0.3333333333333333,"area":"green"}""" },
        { "mow 20 min green", """{"kind":"mow","hours":0.3333333333333333,"area":"green"}""" },
        { "mow green 1 h 20 min", """{"kind":"mow","hours":1.3333333333333333,"area":"green"}""" },
        { "mow GREEN half an hour", """{"kind":"mow","hours":0.5,"area":"green"}""" },
        { "mow 20min 6mm on green twice", """{"kind":"mow","hours":0.3333333333333333,"benchMm":6,"passes":2,"area":"green"}""" },
        { "mow 20min cut 5mm bench 5.5mm", """{"kind":"mow","hours":0.3333333333333333,"benchMm":5.5,"cutMm":5}""" },
        { "mow 200 m2 2 passes with mower", """{"kind":"mow","areaM2":200,"passes":2,"unit":"mower"}""" },
        { "mowed 20min area=green", """{"kind":"mow","hours":0.3333333333333333,"area":"green"}""" },
        { "mow 20min --cut 5mm", """{"kind":"mow","hours":0.3333333333333333,"cutMm":5}""" },
        { "wish 4 mm by 2026-06-01 tue fri", """{"kind":"wish","cutMm":4,"byDate":"2026-06-01","weekdays":["tue","fri"]}""" },
        { "wish tue fri 4mm by 1 June", """{"kind":"wish","cutMm":4,"byDate":"2026-06-01","weekdays":["tue","fri"]}""" },
        { "wish green by June 1st 4", """{"kind":"wish","cutMm":4,"byDate":"2026-06-01","area":"green"}""" },
        { "wish 4 by 1 May", """{"kind":"wish","cutMm":4,"byDate":"2027-05-01"}""" },
        { "wish by=2026-05-31", """{"kind":"wish","byDate":"2026-05-31"}""" },
        { "wish bydate=2026-05-31", """{"kind":"wish","byDate":"2026-05-31"}""" },
        { "wish 4mm --by 2026-05-31", """{"kind":"wish","cutMm":4,"byDate":"2026-05-31"}""" },
        { "wish by fri 4mm", """{"kind":"wish","cutMm":4,"byDate":"2026-05-22"}""" },
        { "wish Tuesdays and Fridays", """{"kind":"wish","weekdays":["tue","fri"]}""" },
        { "wish tue/fri 30 min a day", """{"kind":"wish","weekdays":["tue","fri"],"minutesADay":30}""" },
        { "wish weekday=mon-wed,sat", """{"kind":"wish","weekdays":["mon","tue","wed","sat"]}""" },
        { "wish daily", """{"kind":"wish","weekdays":["mon","tue","wed","thu","fri","sat","sun"]}""" },
        { "wish match 9 June and 16 June fri", """{"kind":"wish","fixtures":["2026-06-09","2026-06-16"],"weekdays":["fri"]}""" },
        { "measure straightedge centre=0.03mm", """{"kind":"measure","what":"straightedge","centre":0.03}""" },
        { "measure straightedge center=0", """{"kind":"measure","what":"straightedge","centre":0}""" },
        { "measure reel left=5in right=126.8", """{"kind":"measure","what":"reel","left":127,"right":126.8}""" },
        { "service knife-screws", """{"kind":"service","what":"knife-screws"}""" },
        { "stone nick", """{"kind":"stone","what":"nick"}""" },
        { "water 5 mm", """{"kind":"water","mm":5}""" },
        { "water green 5", """{"kind":"water","mm":5,"area":"green"}""" },
        { "water 5 l/m2", """{"kind":"water","mm":5}""" },
        { "water 5mm cans 4 5 6 5.5 green", """{"kind":"water","mm":5,"cansMm":[4,5,6,5.5],"area":"green"}""" },
        { "watered 0.2in", """{"kind":"water","mm":5.08}""" },
        { "feed 1.5", """{"kind":"feed","nGm2":1.5}""" },
        { "feed 1.5g green", """{"kind":"feed","nGm2":1.5,"area":"green"}""" },
        { "feed 15 kg/ha", """{"kind":"feed","nGm2":1.5}""" },
        { "feed 1.5 g/m2 N label 12-0-5 as printed", """{"kind":"feed","nGm2":1.5,"label":"12-0-5 as printed"}""" },
        { "treat growth regulator green", """{"kind":"treat","what":"growth regulator","area":"green"}""" },
        { "treat iron on green label as printed", """{"kind":"treat","what":"iron","label":"as printed","area":"green"}""" },
        { "treat \"growth regulator\" label=\"as printed\"", """{"kind":"treat","what":"growth regulator","label":"as printed"}""" },
        { "work topdress 1 kg/m2 green", """{"kind":"work","what":"topdress","kgM2":1,"area":"green"}""" },
        { "topdress 1kg", """{"kind":"work","what":"topdress","kgM2":1}""" },
        { "work sand 1kg", """{"kind":"work","what":"topdress","kgM2":1}""" },
        { "work 3 mm verticut", """{"kind":"work","what":"verticut","depthMm":3}""" },
        { "work aerate 100 mm deep", """{"kind":"work","what":"aerate","depthMm":100}""" },
        { "rolled green", """{"kind":"work","what":"roll","area":"green"}""" },
        { "soil-test P 20 K 60", """{"kind":"soil-test","P":20,"K":60}""" },
        { "soil-test P20 K60mg/kg green", """{"kind":"soil-test","P":20,"K":60,"area":"green"}""" },
        { "soil-test P=20", """{"kind":"soil-test","P":20}""" },
        { "pace 2.4 2.9", """{"kind":"pace","up":2.4,"down":2.9}""" },
        { "pace 2.4 up 2.9 down", """{"kind":"pace","up":2.4,"down":2.9}""" },
        { "pace down 2.9m up 2.4m", """{"kind":"pace","up":2.4,"down":2.9}""" },
        { "pace 13 s", """{"kind":"pace","s":13}""" },
        { "look green", """{"kind":"look","colour":"green"}""" },
        { "look green green", """{"kind":"look","colour":"green","area":"green"}""" },
        { "look pale green", """{"kind":"look","colour":"pale","area":"green"}""" },
        { "look ragged blue grey", """{"kind":"look","colour":"blue-grey","tips":"ragged"}""" },
        { "look scalped 5%", """{"kind":"look","scalpPct":5}""" },
        { "look brown dry footprints thatch 8", """{"kind":"look","colour":"straw","thatchMm":8,"wet":false,"footprints":true}""" },
        { "look no frost", """{"kind":"look","frost":false}""" },
        { "look much came off", """{"kind":"look","cameOff":"much"}""" },
        { "clippings 12 litres from 200 m2", """{"kind":"clippings","litres":12,"areaM2":200}""" },
        { "clippings 12", """{"kind":"clippings","litres":12}""" },
        { "canopy 5mm after", """{"kind":"canopy","mm":5,"when":"after"}""" },
        { "canopy after 5 5.5 5 mm ruler green", """{"kind":"canopy","mm":[5,5.5,5],"when":"after","how":"ruler","area":"green"}""" },
        { "canopy 5 to 6 mm before mowing", """{"kind":"canopy","lowMm":5,"highMm":6,"when":"before"}""" },
        { "canopy 5-6mm before", """{"kind":"canopy","lowMm":5,"highMm":6,"when":"before"}""" },
        { "canopy under 6 after step 0.5", """{"kind":"canopy","highMm":6,"when":"after","stepMm":0.5}""" },
        { "area back warm 120 m2 lat 51.5", """{"kind":"area","grass":"warm","m2":120,"lat":51.5,"area":"back"}""" },
        { "unit mower blades 10 reel 125mm", """{"kind":"unit","blades":10,"reelMm":125,"unit":"mower"}""" },
        { "strip 8 sheets 0.64mm", """{"kind":"strip","layers":8,"stackMm":0.64}""" },
        { "fit ok", """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""" },
        { "fit left none right felt", """{"kind":"fit","playLeft":"none","playRight":"felt"}""" },
        { "paper-cut left cuts right folds", """{"kind":"paper-cut","left":"cuts","right":"folds"}""" },
        { "contact none light mower", """{"kind":"contact","left":"none","right":"light","unit":"mower"}""" },
        { "feeler 30..50 40..60um", """{"kind":"feeler","left":{"goUm":30,"noGoUm":50},"right":{"goUm":40,"noGoUm":60}}""" },
        { "lap 120 grit two minutes", """{"kind":"lap","minutes":2,"grit":120}""" },
        { "grind reel with relief", """{"kind":"grind","what":"reel","reliefDone":true}""" },
        { "rebuild new bearings newKnife", """{"kind":"rebuild","what":["new bearings"],"newKnife":true}""" },
    };

    [Theory]
    [MemberData(nameof(Typed))]
    public void What_people_type_is_understood(string typed, string kept)
    {
        using var inside = Started();
        var ran = inside.Type("add " + typed);
        Assert.Equal((0, ""), (ran.Exit, ran.Error));
        var last = inside.Last;
        var expected = JsonNode.Parse(kept)!.AsObject();
        if (!expected.ContainsKey("unit")) last.Remove("unit");
        if (!expected.ContainsKey("area")) last.Remove("area");
        foreach (var envelope in (string[])["v", "id", "at", "typed", "confirmed"]) last.Remove(envelope);
        Assert.True(JsonNode.DeepEquals(expected, last), last.ToJsonString());
    }

    [Theory]
    [InlineData("weather 4 to 15 rain 3 mm", "2026-05-20", 4, 15, 3)]
    [InlineData("weather yesterday green 4..15 dry", "2026-05-19", 4, 15, 0)]
    [InlineData("weather 18 May min 4 max 15 rain 0.1in", "2026-05-18", 4, 15, 2.54)]
    public void A_days_weather_is_typed_in_any_order(string typed, string date, double low, double high, double rain)
    {
        using var inside = Started();
        Assert.Equal("", inside.Type("add " + typed).Error);
        var shown = inside.Run("book", "weather", "show", "--days", "1").Out;
        Assert.Contains(date, shown, StringComparison.Ordinal);
        Assert.Matches($"{low:0.0} +{high:0.0} +{rain:0.0} ", shown);
    }

    [Theory]
    [InlineData("mow 20min yesterday", "2026-05-19T12:00:00Z")]
    [InlineData("water 5mm green 18 May", "2026-05-18T12:00:00Z")]
    [InlineData("lap 2 min 2026-05-17", "2026-05-17T12:00:00Z")]
    [InlineData("mow 20min yesterday --at 9:30", "2026-05-19T09:30:00Z")]
    [InlineData("mow 20min today", "2026-05-20T10:00:00Z")]
    public void The_day_stands_among_the_words(string typed, string at)
    {
        using var inside = Started();
        Assert.Equal("", inside.Type("add " + typed).Error);
        Assert.Equal(at, (string)inside.Last["at"]!);
    }

    [Theory]
    [InlineData("mow 20min cut 5mm green", "green mown for 20 min, cut at 5 mm")]
    [InlineData("canopy 5 5.5 mm after", "green stands 5, 5.5 mm high, after mowing")]
    [InlineData("look pale ragged scalped 5%", "green looks pale, tips ragged, 5 % scalped")]
    [InlineData("look frost", "green: frost on it")]
    [InlineData("clippings 12 l 200m2", "12 l of clippings from 200 m2 of green")]
    [InlineData("weather 4..15 wind 3 rain 2", "weather of green on 20 May 2026: 4 °C to 15 °C, rain 2 mm, wind 3 m/s")]
    [InlineData("water 5", "5 mm of water on green")]
    [InlineData("water 5 cans 4 5 6 5.5", "5 mm of water on green, caught in the cans 4, 5, 6, 5.5 mm")]
    [InlineData("water 0.2in", "0.2 in of water on green")]
    [InlineData("water 5 --height inch", "0.2 in of water on green")]
    [InlineData("water 2,5 --decimal comma", "2,5 mm of water on green")]
    [InlineData("canopy 5 5,5 after --decimal comma", "green stands 5; 5,5 mm high, after mowing")]
    [InlineData("feed 1.5g", "1.5 g/m² of nitrogen on green")]
    [InlineData("treat iron label as printed", "green treated with iron, label: as printed")]
    [InlineData("work topdress 1kg", "1 kg/m² of sand topdressed on green")]
    [InlineData("work brush", "green brushed")]
    [InlineData("work aerate 100mm", "green aerated, 100 mm deep")]
    [InlineData("soil-test P 20", "soil of green: P 20 mg/kg")]
    [InlineData("pace 2.4 2.9", "a ball rolls 2.4 m up and 2.9 m down on green")]
    [InlineData("wish 4.5mm by 1 June tue fri", "wished for green: a cut of 4.5 mm by 1 Jun 2026, mown on tue and fri")]
    [InlineData("area green roots 80mm", "green: roots 80 mm deep")]
    public void What_was_taken_is_told_in_plain_words(string typed, string told)
    {
        using var inside = Started();
        Assert.Equal($"Taken: {told}.\n", inside.Type("add " + typed).Out);
    }

    [Theory]
    [InlineData("mow 20min gren", "Did you mean \"green\"?")]
    [InlineData("mow 20", "20 min")]
    [InlineData("mow 20min tomorow", "closemown add mow 20min")]
    [InlineData("mow 20min 21 May 2026", "lies ahead")]
    [InlineData("wish byDat=2026-06-01", "Did you mean \"byDate\"?")]
    [InlineData("wish 4mm by 1/6/2026", "1 May")]
    [InlineData("wish 4mm by soon", "2026-05-01 or 1 May")]
    [InlineData("wish 2026-06-01", "by 2026-06-01")]
    [InlineData("water 10 minutes", "l/m2")]
    [InlineData("clippings 1 box", "closemown add clippings 12 l")]
    [InlineData("look nice", "green, pale, purple")]
    [InlineData("canopy 5mm", "canopy 5mm after")]
    [InlineData("weather 4 15 3", "rain 3")]
    [InlineData("away", "closemown add wish 5mm tue fri")]
    [InlineData("match 2026-06-09", "wish match")]
    [InlineData("photo 5", "--note")]
    [InlineData("screw 1/4", "screw 1/4 1/4")]
    [InlineData("work brish", "Did you mean \"brush\"?")]
    [InlineData("mow 20min by=alma", "--by")]
    public void What_cannot_be_taken_says_what_to_type(string typed, string says)
    {
        using var inside = Started();
        inside.Type("add area back cool 50m2");
        var before = inside.Run("book", "verify", "--json").Json["entries"]!.GetValue<int>();
        var ran = inside.Type("add " + typed);
        Assert.Equal((1, ""), (ran.Exit, ran.Out));
        Assert.Contains(says, ran.Error, StringComparison.Ordinal);
        Assert.Equal(before, inside.Run("book", "verify", "--json").Json["entries"]!.GetValue<int>());
    }

    [Fact]
    public void With_several_areas_the_one_meant_must_be_said()
    {
        using var inside = Started();
        inside.Type("add area back cool 50m2");
        Assert.Contains("green, back", inside.Type("add water 5mm").Error, StringComparison.Ordinal);
        Assert.Equal("Taken: 5 mm of water on back.\n", inside.Type("add water 5mm back").Out);
        Assert.Contains("none of the areas", inside.Type("add mow 20min").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_area_of_a_book_is_named_in_passing_but_no_slip_becomes_one()
    {
        using var inside = new Inside(Now);
        Assert.Contains("parsecs", inside.Type("add mow 3 parsecs").Error, StringComparison.Ordinal);
        Assert.Contains("Did you mean \"clean\"?", inside.Type("add look claen").Error, StringComparison.Ordinal);
        Assert.Equal("Taken: lawn mown for 20 min.\n", inside.Type("add mow 20min lawn").Out);
        Assert.Equal("Taken: 5 mm of water on lawn.\n", inside.Type("add water 5").Out);
    }

    private static Inside Started()
    {
        var inside = new Inside(Now);
        inside.Type("new --unit mower --at 2026-04-01T08:00Z");
        inside.Type("add area green cool 200m2 lat 51.5 --at 2026-04-01T08:00Z");
        return inside;
    }
}
