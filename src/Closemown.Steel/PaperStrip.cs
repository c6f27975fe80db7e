using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>The strip in use: its stated thickness, how far off that may be, and what was tried with it.</summary>
/// <param name="Um">Stated thickness of one layer, µm.</param>
/// <param name="SdUm">One standard deviation of it, µm.</param>
/// <param name="CutsToUm">Cuts up to this gap, where tried; null else.</param>
/// <param name="FoldsFromUm">Folds from this gap, where tried; null else.</param>
public sealed record PaperStrip(double Um, double SdUm, double? CutsToUm = null, double? FoldsFromUm = null)
{
    private const double MicrometrePerGram = 1.25;      // by grammage: 1.25 µm per g/m² ± 15 % (common practice, no source)
    private const double GrammageShare = 0.15;
    private const double StackSdUm = 1.5;
    private const double ToldShare = 0.04;
    private const double ToldSdUm = 3;
    private const double CutsShare = 0.45;
    private const double FoldsShare = 0.70;

    /// <summary>A strip nobody described.</summary>
    public static PaperStrip Unknown(UnitDescription unit)
    {
        var p = unit.Start("stripUm", SteelDefaults.StripUm);
        return new(p.Mean, p.Sd);
    }

    /// <summary>A strip of a thickness told without its spread.</summary>
    public static PaperStrip Told(double um) => new(um, Math.Max(ToldSdUm, um * ToldShare));

    /// <summary>The strip of a <c>strip</c> entry.</summary>
    public static PaperStrip Of(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        var sd = e[StripEntry.SdUm];
        PaperStrip strip;
        if (e[StripEntry.Um] is { } um) strip = Told(um);
        else if (e[StripEntry.StackMm] is { } stack && e[StripEntry.Layers] is { } layers) strip = new(stack * 1000 / layers, StackSdUm);
        else strip = new(e[StripEntry.Gsm]!.Value * MicrometrePerGram, e[StripEntry.Gsm]!.Value * MicrometrePerGram * GrammageShare);
        return strip with { SdUm = sd ?? strip.SdUm, CutsToUm = e[StripEntry.CutsToUm], FoldsFromUm = e[StripEntry.FoldsFromUm] };
    }

    /// <summary>Where a paper cut check passes from cuts to nicks and from nicks to folds, µm of gap + bluntness.</summary>
    /// <param name="layers">Layers fed in together.</param>
    /// <param name="damp">A damp strip is a tenth thicker.</param>
    public (double Cuts, double Folds) CutPoints(double layers, bool damp)
    {
        var factor = layers * (damp ? 1.1 : 1.0);
        var cuts = CutsToUm ?? CutsShare * Um;
        var folds = FoldsFromUm ?? FoldsShare * Um;
        if (folds <= cuts) folds = cuts + 1;            // tried to one point only: the band of nicks is at its narrowest
        return (cuts * factor, folds * factor);
    }

    /// <summary>Whether the cut-points were tried on a known gap.</summary>
    public bool Tried => CutsToUm is not null || FoldsFromUm is not null;
}
