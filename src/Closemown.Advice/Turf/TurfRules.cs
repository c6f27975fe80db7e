namespace Closemown.Advice;

/// <summary>The rules and published sources that advice about the turf rests on.</summary>
public static class TurfRules
{
    private const string Practice = "common practice, no source";
    private const string Ours = "our own reckoning: docs/model-turf.md";
    private const string Fao56 = "Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56";

    public static Rule Growth { get; } = new("growth-by-warmth", "Growth follows the growth potential of the warmth, what water the roots can draw, and nitrogen at work; how much of each, this area's own record teaches.", "Gelernter & Stowell 2005, Golf Course Management 73(3):108; " + Ours);

    public static Rule Water { get; } = new("water-by-balance", "Water is due when more is missing in the root zone than the turf can draw with ease.", Fao56 + ", eq. 83 and 85");

    public static Rule Et { get; } = new("reference-et", "What turf draws is reckoned from the reference evapotranspiration of the day.", Fao56 + ", eq. 6, 52");

    public static Rule Feed { get; } = new("nitrogen-by-growth", "Nitrogen asked for is a monthly maximum times the growth potential of the month. The label and local law decide what is given; never more than a label gives.", "Gelernter & Stowell 2005, Golf Course Management 73(3):108; Woods 2013");

    public static Rule Regulator { get; } = new("regulator-by-warmth", "A growth regulator runs out by a sum of warmth, not by the calendar. The label and local law decide.", "Kreuser & Soldat 2011, Crop Sci. 51:2228; Reasor et al. 2018");

    public static Rule DollarSpot { get; } = new("dollar-spot", "A probability of dollar spot from five days' warmth and humidity, as information: the label and local law decide about any treatment.", "Smith et al. 2018, PLoS ONE 13:e0194216");

    public static Rule Frost { get; } = new("keep-off-frost", "Frozen turf is not mown or walked on.", Practice);

    public static Rule Third { get; } = new("third", "No more than a third of the leaf at one mowing; over it only after asking, or in steps.", Practice);

    public static Rule Lower { get; } = new("lowering", "Lower by at most half a millimetre a step, three mowings apart, none under stress and never on wilting turf.", Practice);

    public static Rule Fixture { get; } = new("before-a-match", "No change of height in the last days before a match, no lap in the last two, no sand in the last ten.", Practice);

    public static Rule StandOnIt { get; } = new("stand-on-it", "Before any planned mowing, stand on it: any yes beats the forecast.", Practice);

    public static Rule Plan { get; } = new("least-cost", "The days and heights with the least expected cost in mowings over the weeks ahead, with what tall turf at the end would still cost.", "our own reckoning: docs/plan.md");

    public static Rule Scalp { get; } = new("green-base", "A scalp is a cut below the green base, however little comes off; how high it is here, the scalp seen after mowings teaches.", Ours);

    public static Rule Clip { get; } = new("clip-for-height", "Travel between two blade passes should be near the height cut.", Practice);
}
