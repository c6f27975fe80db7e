namespace Closemown.Advice;

/// <summary>The rules that setting a height rests on.</summary>
public static class HeightRules
{
    private const string Practice = "common practice, no source";
    private const string Ours = "our own reckoning: docs/model-height.md";

    public static Rule Sure { get; } = new("stop-when-sure", "Setting stops when both sides are within the tolerance with the probability asked for, never on the first reading inside it.", Ours);

    public static Rule Locked { get; } = new("read-tight", "Read with the nuts tight, always: tightening shifts the height.", Practice);

    public static Rule ReadOnce { get; } = new("read-once-each-sitting", "A height of an earlier sitting is read once before it is believed.", Practice);

    public static Rule Follows { get; } = new("side-that-does-not-follow", "A side that makes less than half of what its screw was turned, twice, has a fault: lock nut, thread, bracket or pin.", Practice);

    public static Rule Together { get; } = new("both-screws-together", "One screw moves both sides: the turns of both are solved together.", Ours);

    public static Rule FromBelow { get; } = new("come-up-to-it", "Until the lost motion of a screw is known well, come up to the height from below.", Practice);

    public static Rule Nip { get; } = new("nip-after-height", "After the height was set or read, both ends are felt before mowing: a gauge hooked on the bedknife and the nuts can move the gap.", Practice);
}
