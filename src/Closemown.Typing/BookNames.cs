namespace Closemown.Typing;

/// <summary>The names of areas and units that the book knows; asked for only where a word may be one.</summary>
public sealed class BookNames(Func<(IReadOnlyList<string> Areas, IReadOnlyList<string> Units)> read)
{
    private readonly Lazy<(IReadOnlyList<string> Areas, IReadOnlyList<string> Units)> names = new(read);

    /// <summary>No book.</summary>
    public static BookNames None => new(() => ([], []));

    /// <summary>The areas.</summary>
    public IReadOnlyList<string> Areas => names.Value.Areas;

    /// <summary>The cutting units.</summary>
    public IReadOnlyList<string> Units => names.Value.Units;

    /// <summary>The known name that the words from a place on spell, and how many words it has; null for none.</summary>
    public static (string Name, int Words)? At(IReadOnlyList<string> known, IReadOnlyList<string> words, int at)
    {
        for (var n = Math.Min(3, words.Count - at); n > 0; n--)
        {
            var said = string.Join(' ', words.Skip(at).Take(n));
            if (known.FirstOrDefault(k => k.Equals(said, StringComparison.OrdinalIgnoreCase)) is { } name) return (name, n);
        }
        return null;
    }
}
