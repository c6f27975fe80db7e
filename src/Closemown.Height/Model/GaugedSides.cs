using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>Which sides were gauged since what: the screws turned, the sitting begun, the nuts tight or loose.</summary>
internal sealed class GaugedSides
{
    private const int Both = 3;
    private int sinceTurn, thisSitting;
    private bool locked, loose;
    private GaussianState? last;

    /// <summary>Whether both were, since a screw was last turned.</summary>
    public bool SinceTurn => sinceTurn == Both;

    /// <summary>Whether both were in this sitting, and nothing has moved them unseen since.</summary>
    public bool ThisSitting => thisSitting == Both;

    /// <summary>Whether tight and loose readings both exist: only then is the shift by tightening known.</summary>
    public bool LockedAndLoose => locked && loose;

    /// <summary>What was believed when they were gauged the time before the last, the screws not turned since; null where they were not.</summary>
    public GaussianState? Before { get; private set; }

    /// <summary>Sides were gauged.</summary>
    /// <param name="sides">0 left, 1 right.</param>
    /// <param name="tight">Whether the nuts were tight.</param>
    /// <param name="belief">What was believed after it: kept, not copied.</param>
    public void Read(IEnumerable<int> sides, bool tight, GaussianState belief)
    {
        foreach (var side in sides) (sinceTurn, thisSitting) = (sinceTurn | (1 << side), thisSitting | (1 << side));
        if (tight) locked = true;
        else loose = true;
        (Before, last) = (last, belief);
    }

    /// <summary>A screw was turned.</summary>
    public void Turned()
    {
        sinceTurn = 0;
        Elsewhere();
    }

    /// <summary>They stand elsewhere than they were gauged.</summary>
    public void Elsewhere() => Before = last = null;

    /// <summary>Something may have moved them that nobody measured.</summary>
    public void MovedUnseen() => thisSitting = 0;
}
