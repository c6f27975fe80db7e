namespace Closemown.Turf;

/// <summary>Starting values of an area before its record has taught anything. All are common practice or assumption, no source, unless a source is named.</summary>
public static class AreaDefaults
{
    /// <summary>Latitude where none was told, degrees: the sun of a temperate place.</summary>
    public const double LatitudeDeg = 50;

    /// <summary>Water a sandy root zone keeps after draining, share of volume.</summary>
    public const double FieldCapacity = 0.25;

    /// <summary>Water left in it at wilting, share of volume.</summary>
    public const double WiltingPoint = 0.08;

    /// <summary>Depth of close-mown turf's roots, mm.</summary>
    public const double RootMm = 100;

    /// <summary>What the roots can draw at the least where no watering is in the record: few keepers let such turf go dry, fewer write each watering down.</summary>
    public const double LeastUnsaidKs = 0.75;

    /// <summary>How far the full growth rate may lie from the species' value, as a share: the spread of a factor of 1.6 either way.</summary>
    public const double RateShareSd = 0.48;

    /// <summary>Days without a watering in the record after which none counts as begun; the week's warmth up to which turf does not dry out then, and from which it does, °C.</summary>
    public const int UnsaidAfterDays = 30;

    /// <inheritdoc cref="UnsaidAfterDays"/>
    public const double DriesNotC = 9, DriesFromC = 14;

    /// <summary>How far growth strays from its pattern for weeks on end, as a share of the full rate, and for how long, days.</summary>
    public const double SpellShareSd = 0.4;

    /// <inheritdoc cref="SpellShareSd"/>
    public const double SpellDays = 14;

    /// <summary>Spread of one day's growth, as a share: a factor of 1.25 either way, and a little more for what the day brings unseen.</summary>
    public const double DayShareSd = 0.28;

    /// <summary>
    /// What turf grows of that which the water balance says a dry soil withholds, as a share: mean and spread. The depth of the roots and
    /// what the soil holds are rarely told, and who sees turf suffer waters it, entered or not.
    /// </summary>
    public const double DryShare = 0.4, DryShareSd = 0.35;

    /// <summary>
    /// How far the water balance may be off besides on some days, same unit; and how far the form of growth may be off on any day, as a
    /// share of the full rate.
    /// </summary>
    public const double DryDaysShareSd = 0.5, FormShareSd = 0.12;

    /// <summary>The same in the cold: a share of it where nothing grows, all of it from this growth potential on.</summary>
    public const double FormLeastShare = 0.15, FormFullFrom = 0.3;

    /// <summary>More growth a gram of nitrogen per m² still at work brings, as a share of the full rate: mean and spread.</summary>
    public const double FeedShare = 0.12, FeedShareSd = 0.1;

    /// <summary>How long nitrogen stays at work: days at full growth until a third (e⁻¹) is left.</summary>
    public const double FeedDays = 21;

    /// <summary>What a mm more of standing height adds to growth, as a share: mean and spread; short turf has less leaf to grow from.</summary>
    public const double TallShare = 0, TallShareSd = 0.05;

    /// <summary>
    /// Where growth lies between the published bell (0) and one half as wide again (1), as a share of the full rate: mean and spread.
    /// </summary>
    /// <remarks>
    /// The bell was made for monthly means. Leaves of ryegrass lengthen about in line with the warmth above some 3 °C up to 20 (growth
    /// chambers of the 1970s, from memory): at 8 and 10 °C 0.3 and 0.4 of their best, where the bell has 0.09 and 0.19 and the wider one
    /// 0.35 and 0.48.
    /// Too low a start in the cold is made up for by a wrong rate, and the turf is found taller than was said.
    /// </remarks>
    public const double WideShare = 0.8, WideShareSd = 0.5;

    /// <summary>Cut as set against cut as made, mm, a mowing.</summary>
    public const double CutMm = 0.12;

    /// <summary>How far the cut told may lie from the cut made, the same at each mowing, mm, where no gauge stands behind it.</summary>
    public const double ToldCutSdMm = 0.3;

    /// <summary>How the ground's firmness moves that from mowing to mowing, mm.</summary>
    public const double OffsetWalkMm = 0.03;

    /// <summary>Leaf taken off per volume of clippings, mm per L/m²: mean and spread. 20 mL/m² for about 0.4 mm.</summary>
    public const double ClipMmPerLM2 = 20, ClipMmPerLM2Sd = 10;

    /// <summary>Standing height of an area nobody has read: mean and spread, mm.</summary>
    public const double CanopyMm = 7, CanopySdMm = 4;

    /// <summary>Height of a sward nobody mows, mm, seed heads apart: creeping bentgrass and meadow-grasses, fescues and browntop, ryegrass, warm-season grass, and where nothing was told.</summary>
    public const double BentCeilingMm = 150, FescueCeilingMm = 250, RyegrassCeilingMm = 350, WarmCeilingMm = 200, UntoldCeilingMm = 250;

    /// <summary>The widest spread of a standing height, as a share of the unmown height: that of knowing nothing from 0 up to it.</summary>
    public const double WidestShare = 0.29;

    /// <summary>Days without a reading or a mowing from which on a height hardly known counts as not known.</summary>
    public const int SilentDays = 14;

    /// <summary>Days after which it counts as not known in any case.</summary>
    public const int LongSilentDays = 366;

    /// <summary>Spread from which on a height is hardly known, as a share of it.</summary>
    public const double HardlyKnownShare = 0.25;

    /// <summary>How long stress takes to fade or to build up, days.</summary>
    public const double StressDays = 7;

    /// <summary>How much of what the weather asks for this area feels: mean and spread; 1 is usual.</summary>
    public const double StressShare = 1, StressShareSd = 0.35;

    /// <summary>How stress strays from what the weather makes of it, on its scale of 0 to 3.</summary>
    public const double StressStraySd = 0.45;

    /// <summary>Scatter of a look at the turf, on the same scale.</summary>
    public const double LookSd = 0.6;

    /// <summary>
    /// The green base as a share of the height kept, and how well that is known: as a share again, which no look ends, and the same at any
    /// height, mm.
    /// </summary>
    public const double BaseShare = 0.55, BaseShareSd = 0.05, BaseSdMm = 0.5;
}
