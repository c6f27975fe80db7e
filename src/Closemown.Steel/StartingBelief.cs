using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>What is believed of a unit before its first entry: the Gaussian factors on the first state and the constants.</summary>
internal static class StartingBelief
{
    public static void AddTo(ChainModel chain, UnitDescription unit, PaperStrip strip)
    {
        Together(chain, [Layout.ClearanceLeft, Layout.ClearanceRight], unit.Start("clearanceUm", SteelDefaults.ClearanceUm), SteelDefaults.EndsTogether, constants: false);
        Together(chain, [Layout.Edge, Layout.Edge + 1, Layout.Edge + 2], unit.Start("edgeUm", SteelDefaults.EdgeUm), SteelDefaults.SidesTogether, constants: false);
        State(chain, Layout.Bow, unit.Start("bowUm", SteelDefaults.BowUm));
        State(chain, Layout.Strip, new Prior(0, strip.SdUm));

        var click = unit.ClickStart;
        Constant(chain, Layout.Click, click);
        Constant(chain, Layout.ClickSide, new Prior(0, click.Mean * SteelDefaults.ClickSideShare));
        Together(chain, [Layout.OpeningPerHour, Layout.OpeningPerHour + 1], unit.Start("openingUmPerHour", SteelDefaults.OpeningUmPerHour), SteelDefaults.SidesTogether, constants: true);
        Together(chain, [Layout.OpeningPerOuting, Layout.OpeningPerOuting + 1], unit.Start("openingUmPerOuting", SteelDefaults.OpeningUmPerOuting), SteelDefaults.SidesTogether, constants: true);
        Constant(chain, Layout.LostMotion, unit.Start("lostMotionUm", SteelDefaults.LostMotionUm));
        Constant(chain, Layout.LostMotion + 1, unit.Start("lostMotionUm", SteelDefaults.LostMotionUm));
        Constant(chain, Layout.Dulling, unit.Start("dullingUmPerHour", SteelDefaults.DullingUmPerHour));
        Constant(chain, Layout.Touch, unit.Start("touchUm", SteelDefaults.TouchUm));
        Constant(chain, Layout.PaperOffset, unit.Start("paperOffsetUm", SteelDefaults.PaperOffsetUm));
        Constant(chain, Layout.CleanOffset, new Prior(0, unit.CleanUm.Sd));
        Constant(chain, Layout.LapOpening, unit.Start("lapUmPerMinute", SteelDefaults.LapUmPerMinute));
        Constant(chain, Layout.LapCoarse, new Prior(0, SteelDefaults.GritSdUmPerMinute));
        Constant(chain, Layout.LapFine, new Prior(0, SteelDefaults.GritSdUmPerMinute));
    }

    private static void State(ChainModel chain, int component, Prior p) => chain.AddGaussian([Term.State(0, component, 1)], p.Mean, p.Sd);

    private static void Constant(ChainModel chain, int index, Prior p) => chain.AddGaussian([Term.Constant(index, 1)], p.Mean, p.Sd);

    /// <summary>Unknowns of one mean and spread that go together: written as independent contrasts of an orthonormal (Helmert) basis.</summary>
    private static void Together(ChainModel chain, int[] which, Prior p, double correlation, bool constants)
    {
        var n = which.Length;
        Span<Term> terms = stackalloc Term[n];
        for (var k = 0; k < n; k++)
        {
            // Row 0 is the sum; row k compares unknown k with the mean of those before it.
            for (var i = 0; i < n; i++)
            {
                var w = k == 0 ? 1 / Math.Sqrt(n)
                    : i < k ? -1 / Math.Sqrt(k * (k + 1.0))
                    : i == k ? k / Math.Sqrt(k * (k + 1.0)) : 0;
                terms[i] = constants ? Term.Constant(which[i], w) : Term.State(0, which[i], w);
            }
            var variance = p.Sd * p.Sd * (k == 0 ? 1 + ((n - 1) * correlation) : 1 - correlation);
            chain.AddGaussian(k == 0 ? terms : terms[..(k + 1)], k == 0 ? p.Mean * Math.Sqrt(n) : 0, Math.Sqrt(variance));
        }
    }
}
