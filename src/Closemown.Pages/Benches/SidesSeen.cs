namespace Closemown.Pages;

/// <summary>Left and right of the mower in the order in which whoever stands there sees them.</summary>
public static class SidesSeen
{
    /// <summary>Whether the mower's right is at the person's left.</summary>
    /// <param name="stand">Where they stand, of <see cref="VisitorLook"/>.</param>
    public static bool IsMirrored(string stand) => stand is VisitorLook.InFront or VisitorLook.UpsideDown;

    /// <summary>"left" and "right", from the person's left.</summary>
    public static IReadOnlyList<string> Of(bool mirrored) => mirrored ? ["right", "left"] : ["left", "right"];

    /// <summary>That of the two which belongs to the side.</summary>
    public static double At(this (double Left, double Right) two, string side) => side == "left" ? two.Left : two.Right;
}
