using System.Collections.ObjectModel;

namespace Closemown.Entries;

/// <summary>A feeler reading at a station: between the thickest leaf that goes and the thinnest that does not.</summary>
/// <param name="GoUm">Thickest that goes, µm; null where none was tried.</param>
/// <param name="NoGoUm">Thinnest that does not go, µm; null where none was tried.</param>
public sealed record GoNoGo(double? GoUm, double? NoGoUm);

/// <summary>A starting value of the person's own.</summary>
/// <param name="Mean">Its mean, in the unit of its name.</param>
/// <param name="Sd">One standard deviation, more than 0.</param>
public readonly record struct Prior(double Mean, double Sd);

/// <summary>One dated reading or action in the book. Never changed once made.</summary>
public sealed class Entry
{
    private readonly object?[] values;

    internal Entry(KindSpec kind, object?[] values)
    {
        Kind = kind;
        this.values = values;
    }

    /// <summary>UUID version 7, made by the writer.</summary>
    public required Guid Id { get; init; }

    /// <summary>When it happened.</summary>
    public required DateTimeOffset At { get; init; }

    public KindSpec Kind { get; }

    /// <summary>The cutting unit's short name, where the entry is about one.</summary>
    public string? Unit { get; init; }

    /// <summary>The turf area's short name, where the entry is about one.</summary>
    public string? Area { get; init; }

    public string? By { get; init; }

    public string? Note { get; init; }

    /// <summary>The entry that this one replaces or takes out.</summary>
    public Guid? Voids { get; init; }

    /// <summary>What the person typed, by field, where it was converted.</summary>
    public IReadOnlyDictionary<string, string> Typed { get; init; } = ReadOnlyDictionary<string, string>.Empty;

    /// <summary>Fields whose implausible value the person stands by.</summary>
    public IReadOnlyList<string> Confirmed { get; init; } = [];

    /// <summary>Unknown fields, kept as they came: name and JSON text, in order of name.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Others { get; init; } = [];

    /// <summary>The entry on one line, in the one canonical form: the same entry is the same text.</summary>
    public string Json { get; internal set; } = "";

    /// <summary>The value of a field as it was read, or null.</summary>
    public object? this[int field] => field < 0 ? null : values[field];

    /// <summary>A number, or null where the entry has none.</summary>
    public double? this[Field<double> field] => Value(field) is double d ? d : null;

    /// <summary>A word, text or date, or null where the entry has none.</summary>
    public string? this[Field<string> field] => Value(field) as string;

    /// <summary>True or false, or null where the entry does not say.</summary>
    public bool? this[Field<bool> field] => Value(field) is bool b ? b : null;

    /// <summary>A list of numbers, or null; a single number is a list of one.</summary>
    public IReadOnlyList<double>? this[Field<IReadOnlyList<double>> field] => Value(field) switch
    {
        double d => [d],
        double[] list => list,
        _ => null,
    };

    /// <summary>A list of words, texts or dates, or null.</summary>
    public IReadOnlyList<string>? this[Field<IReadOnlyList<string>> field] => Value(field) as string[];

    /// <summary>A reading of a feeler gauge, or null.</summary>
    public GoNoGo? this[Field<GoNoGo> field] => Value(field) as GoNoGo;

    /// <summary>Starting values by name, or null.</summary>
    public IReadOnlyDictionary<string, Prior>? this[Field<IReadOnlyDictionary<string, Prior>> field] => Value(field) as IReadOnlyDictionary<string, Prior>;

    /// <summary>Whether the entry has a value in a field.</summary>
    public bool Has(FieldSpec field) => Value(field) is not null;

    /// <summary>The same entry, told of an area that it does not name itself; what was written stays as it is.</summary>
    public Entry On(string area) => new(Kind, values)
    {
        Id = Id,
        At = At,
        Unit = Unit,
        Area = area,
        By = By,
        Note = Note,
        Voids = Voids,
        Typed = Typed,
        Confirmed = Confirmed,
        Others = Others,
        Json = Json,
    };

    /// <summary>Whether the entry is of that kind.</summary>
    public bool Is(KindSpec kind) => ReferenceEquals(Kind, kind);

    /// <summary>By name: a field that several kinds have is read by any one's key.</summary>
    private object? Value(FieldSpec field) => this[Kind.IndexOf(field.Name)];

    public override string ToString() => Json;
}
