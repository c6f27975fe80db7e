using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>feeler</c>: feeler gauge: below, between, above.</summary>
public static class FeelerEntry
{
    public const string Name = "feeler";

    /// <summary>Thickest that goes and thinnest that does not, µm.</summary>
    public static Field<GoNoGo> Left { get; } = GoNoGoOf(Stations.Left, -100, 5000, "thickest that goes and thinnest that does not, µm");

    /// <summary>Thickest that goes and thinnest that does not, µm.</summary>
    public static Field<GoNoGo> Centre { get; } = GoNoGoOf(Stations.Centre, -100, 5000, "thickest that goes and thinnest that does not, µm");

    /// <summary>Thickest that goes and thinnest that does not, µm.</summary>
    public static Field<GoNoGo> Right { get; } = GoNoGoOf(Stations.Right, -100, 5000, "thickest that goes and thinnest that does not, µm");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "feeler gauge: below, between, above",
        Left, Centre, Right, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"feeler","left":{"goUm":30,"noGoUm":50}}""",
    };
}
