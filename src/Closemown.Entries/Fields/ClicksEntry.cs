using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>clicks</c>: adjusters turned, + is in (towards each other).</summary>
public static class ClicksEntry
{
    public const string Name = "clicks";

    /// <summary>Steps of the left adjuster.</summary>
    public static Field<double> Left { get; } = HalfSteps("left", -60, 60, "steps of the left adjuster");

    /// <summary>Steps of the right adjuster.</summary>
    public static Field<double> Right { get; } = HalfSteps("right", -60, 60, "steps of the right adjuster");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "adjusters turned, + is in (towards each other)",
        Left, Right)
    {
        OneOf = [[Left.Name, Right.Name]],
        Example = """{"kind":"clicks","left":1,"right":1}""",
    };
}
