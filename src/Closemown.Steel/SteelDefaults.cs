using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>
/// Starting values before a unit has taught anything, in µm unless named otherwise. All are common practice or assumption,
/// no source; each can be set by <c>priors</c> of a <c>unit</c> entry under the name given here.
/// </summary>
public static class SteelDefaults
{
    /// <summary>Clearance at an end, second-hand and unknown.</summary>
    public static Prior ClearanceUm { get; } = new(60, 80);

    /// <summary>Clearance at an end, own unit after a rebuild.</summary>
    public static Prior ClearanceAfterRebuildUm { get; } = new(40, 40);

    /// <summary>Bluntness of an edge of unknown history.</summary>
    public static Prior EdgeUm { get; } = new(15, 10);

    /// <summary>Bluntness just lapped.</summary>
    public static Prior EdgeLappedUm { get; } = new(3, 1.5);

    /// <summary>Bluntness just ground.</summary>
    public static Prior EdgeGroundUm { get; } = new(2, 1);

    /// <summary>One click, untold. (Handbooks print 0.0007 and 0.0009 in.)</summary>
    public static Prior ClickUm { get; } = new(19, 3);

    /// <summary>How far off a told click may be, as a share.</summary>
    public const double ToldClickShare = 0.05;

    /// <summary>How far the two sides' clicks may differ from their mean, as a share: the same part twice, so an assumption of half the told spread.</summary>
    public const double ClickSideShare = 0.025;

    public static Prior LostMotionUm { get; } = new(5, 3);

    public static Prior OpeningUmPerOuting { get; } = new(0.4, 0.4);

    public static Prior OpeningUmPerHour { get; } = new(3.5, 2.5);

    public static Prior DullingUmPerHour { get; } = new(1.2, 0.6);

    /// <summary>Opening of each side a minute of lapping where the pair stands close.</summary>
    public static Prior LapUmPerMinute { get; } = new(5, 2);

    /// <summary>How much one class of grit may differ from the value all share.</summary>
    public const double GritSdUmPerMinute = 1.0;

    /// <summary>Bow of the centre, own and ground.</summary>
    public static Prior BowGroundUm { get; } = new(0, 6);

    /// <summary>Bow of the centre, unknown.</summary>
    public static Prior BowUm { get; } = new(0, 15);

    /// <summary>Bow with a new bedknife not ground on its bar.</summary>
    public static Prior BowNewKnifeUm { get; } = new(0, 40);

    /// <summary>Run-out that the hand feels before the mean clearance is zero.</summary>
    public static Prior TouchUm { get; } = new(6, 5);

    /// <summary>What setting or reading the height moves each end of the nip, a spread, before this unit has shown it. Name <c>heightShiftUm</c> (its mean counts).</summary>
    public const double HeightShiftUm = 5;

    /// <summary>Common shift of both cut-points of the paper check.</summary>
    public static Prior PaperOffsetUm { get; } = new(0, 8);

    /// <summary>The same where the strip was tried on a known gap, as a share of the untried shift.</summary>
    public const double TriedStripShare = 3.0 / 8.0;

    /// <summary>Half the leaves torn where gap + bluntness reaches this.</summary>
    public static Prior CleanUm { get; } = new(40, 8);

    /// <summary>From clean to torn over this much gap + bluntness.</summary>
    public const double TearSpreadUm = 8;

    /// <summary>Thickness of a strip that was not told.</summary>
    public static Prior StripUm { get; } = new(80, 20);

    /// <summary>Clearance in tolerance when the person did not say: a light touch to just clear.</summary>
    public static (double Low, double High) BandUm { get; } = (-6, 35);

    public static (double Low, double High) LightContactBandUm { get; } = (-8, 15);

    public static (double Low, double High) ClearBandUm { get; } = (10, 50);

    /// <summary>Adjusters left and right, mm from the middle.</summary>
    public static IReadOnlyList<double> AdjusterAtMm { get; } = [-280, 280];

    /// <summary>Stations left, centre, right, mm from the middle.</summary>
    public static IReadOnlyList<double> StationAtMm { get; } = [-230, 0, 230];

    public const double WidthMm = 510;

    /// <summary>How tightly the two ends of an unknown unit go together (correlation): an assumption. It leaves about two clicks of tilt either way.</summary>
    public const double EndsTogether = 0.875;

    /// <summary>How tightly the edges at the three stations, and the two sides' opening, go together: an assumption.</summary>
    public const double SidesTogether = 0.5;

    /// <summary>Scatter of the checks, µm; what a person's fingers add around the cut-points.</summary>
    public static IReadOnlyDictionary<string, double> ScatterUm { get; } = new Dictionary<string, double>
    {
        [PaperCutEntry.Name] = 6.5,
        [PaperDragEntry.Name] = 6,
        [ContactEntry.Name] = 4.5,
        [TorchEntry.Name] = 5,
        [SwathEntry.Name] = 10,
        [FeelerEntry.Name] = 5,
    };

    /// <summary>
    /// Share of its variance that a repeat of a check, by the same person at the same place with nothing changed between, has in common with the first:
    /// the same hand feels the same blade again. Name <c>repeatShare</c> (its mean counts, 0 to 0.95); untold it is learned from repeats.
    /// </summary>
    public const double RepeatShare = 0.75;

    /// <summary>More scatter while the machine is warm from running or the sun.</summary>
    public const double WarmScatterUm = 10;

    /// <summary>More scatter of a check that does not name its blade: run-out belongs to blades. An assumption.</summary>
    public const double UnnamedBladeUm = 2;

    /// <summary>How far a single blade may stand off from the mean blade, µm: seen in the cut from 10 to 20. Common practice, no source.</summary>
    public const double BladesApartUm = 8;

    /// <summary>Noise of the chain: µm per √hour mown, per √click, at a reversal, per √hour of an edge, and a floor at every step. Assumptions.</summary>
    public const double MowNoiseUm = 1.3;

    public const double ClickNoiseUm = 1.2;
    public const double ReversalNoiseUm = 2.5;
    public const double EdgeNoiseUm = 0.6;
    public const double FloorNoiseUm = 0.3;

    /// <summary>Noise given to what a step cannot move, so that the chain stays regular.</summary>
    public const double StillNoiseUm = 0.05;
}
