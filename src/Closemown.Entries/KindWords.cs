namespace Closemown.Entries;

/// <summary>Kinds of entry in plain words, for people who read; the kinds' own names stay what is written and typed.</summary>
public static class KindWords
{
    /// <summary>A reading as a thing: "paper check", "touch".</summary>
    public static string Reading(KindSpec kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return kind.Name switch
        {
            "paper-cut" => "paper check",
            "paper-drag" => "pull of the paper",
            "contact" => "touch",
            "torch" => "torch line",
            "swath" => "look at the mown strip",
            "feeler" => "feeler reading",
            "gauge" => "bench height",
            "canopy" => "standing height",
            _ => kind.Name,
        };
    }

    /// <summary>What was done, in front of its details, where the kind's name is no plain word.</summary>
    public static string Done(KindSpec kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return kind.Name switch
        {
            "strike" => "hit something",
            "square-up" => "same drag at both ends",
            "fit" => "looked over",
            "torch" => "torch line",
            "swath" => "mown strip",
            _ => kind.Name,
        };
    }
}
