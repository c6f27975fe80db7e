namespace Closemown.Entries;

/// <summary>What an entry is about: a cutting unit, a turf area, both or neither.</summary>
public enum Belongs
{
    Nothing,
    Unit,
    Area,
    UnitAndArea,
}

/// <summary>What an entry of a kind does to the record.</summary>
public enum Nature
{
    /// <summary>Says what something is.</summary>
    Description,

    /// <summary>A reading: it has a surprise.</summary>
    Reading,

    /// <summary>Something done.</summary>
    Action,
}

/// <summary>One kind of entry: its name, its fields and what must be there.</summary>
public sealed class KindSpec
{
    // Not frozen, nor made by LINQ: both are slow to make, and every start makes one for each kind.
    private readonly Dictionary<string, int> index = new(StringComparer.Ordinal);

    internal KindSpec(string name, Belongs belongs, Nature nature, string help, params FieldSpec[] fields)
    {
        (Name, Belongs, Nature, Help, Fields) = (name, belongs, nature, help, fields);
        for (var i = 0; i < fields.Length; i++) index.Add(fields[i].Name, i);
    }

    /// <summary>Its name in the contract, in kebab-case.</summary>
    public string Name { get; }

    public Belongs Belongs { get; }

    public Nature Nature { get; }

    public string Help { get; }

    public IReadOnlyList<FieldSpec> Fields { get; }

    /// <summary>Groups of fields of which at least one must be there.</summary>
    public IReadOnlyList<IReadOnlyList<string>> OneOf { get; init; } = [];

    /// <summary>Whether fields not in the table must be numbers (element: mg/kg of a soil test).</summary>
    public bool OtherFieldsAreNumbers { get; init; }

    /// <summary>An example line that the reader takes, without envelope.</summary>
    public string Example { get; init; } = "";

    /// <summary>Whether it is a check at stations.</summary>
    public bool HasStations => index.ContainsKey(Stations.Left) && index.ContainsKey(Stations.Centre);

    /// <summary>Position of a field in the table, or −1.</summary>
    public int IndexOf(string field) => index.TryGetValue(field, out var i) ? i : -1;

    public override string ToString() => Name;
}

/// <summary>The stations, as seen by the operator who walks behind.</summary>
public static class Stations
{
    public const string Left = "left";
    public const string Centre = "centre";
    public const string Right = "right";

    public static IReadOnlyList<string> All { get; } = [Left, Centre, Right];

    /// <summary>0, 1, 2 for left, centre, right; −1 for anything else.</summary>
    public static int IndexOf(string? station) => station switch { Left => 0, Centre => 1, Right => 2, _ => -1 };
}
