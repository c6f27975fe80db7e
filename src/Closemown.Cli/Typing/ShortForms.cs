using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>The short way to write an entry at the bench: words and numbers in the order of the fields, or field=value.</summary>
internal static class ShortForms
{
    /// <summary>How each kind is written shortly.</summary>
    public static IReadOnlyDictionary<string, string> Examples { get; } = new Dictionary<string, string>
    {
        ["unit"] = "unit blades=10 click=\"0.0007 in\"",
        ["strip"] = "strip 80gsm",
        ["fit"] = "fit none none tight free straight",
        ["paper-cut"] = "paper-cut cuts cuts folds",
        ["paper-drag"] = "paper-drag slight - loose",
        ["contact"] = "contact none light",
        ["torch"] = "torch thin thin wide",
        ["swath"] = "swath clean clean ragged ticks",
        ["feeler"] = "feeler left=30..50um",
        ["clicks"] = "clicks 1 1",
        ["square-up"] = "square-up",
        ["lap"] = "lap 2 min grit=120",
        ["stone"] = "stone face",
        ["grind"] = "grind both",
        ["rebuild"] = "rebuild \"new bearings\"",
        ["strike"] = "strike left",
        ["gauge"] = "gauge 6.1 6.3",
        ["screw"] = "screw left +0.25",
        ["locked"] = "locked",
        ["area"] = "area grass=cool m2=120 --area green",
        ["mow"] = "mow 90 min",
        ["canopy"] = "canopy 5mm --how ruler --when after",
        ["look"] = "look pale clean",
        ["clippings"] = "clippings 12",
        ["weather"] = "weather 4..15 rain 3",
        ["water"] = "water 5",
        ["feed"] = "feed 1.5",
        ["treat"] = "treat \"growth regulator\" label=\"as printed\"",
        ["work"] = "work topdress kgM2=1",
        ["soil-test"] = "soil-test P=20 K=60",
        ["pace"] = "pace 2.4 2.9",
        ["wish"] = "wish 5 weekdays=tue,fri",
        ["decline"] = "decline next-…",
    };

    /// <summary>Puts what was typed into the entry.</summary>
    /// <exception cref="CliFault">A word fits nowhere.</exception>
    public static void Read(TypedEntry entry, IReadOnlyList<string> typed)
    {
        var loose = new List<string>();
        typed = FieldOptions.Assigned(entry.Kind, typed);
        foreach (var token in typed)
        {
            if (Assignment(token) is not var (name, value)) loose.Add(token);
            else if (FieldNames.Find(entry.Kind, name) is { } field) entry.Set(field, value);
            else if (entry.Kind.OtherFieldsAreNumbers) entry.SetOther(name, value);
            else throw FieldNames.Unknown(entry.Kind, name);
        }
        if (SideWords.Place(entry, loose) || SpotWords.Place(entry, loose)) return;
        if (!Stationwise(entry, loose)) new LooseWords(entry).Place(WithUnits(entry.Kind, loose));
    }

    /// <summary>Two words at the stations are left and right, one is everywhere, three are in order.</summary>
    private static bool Stationwise(TypedEntry entry, List<string> loose)
    {
        var kind = entry.Kind;
        if (!kind.HasStations || kind.Fields[kind.IndexOf(Stations.Left)] is not { Form: FieldForm.Word } left) return false;
        var words = loose.TakeWhile(w => w == "-" || FieldText.Word(left, w) is not null).ToList();
        int[] at = words.Count switch { 1 => [0, 0, 0], 2 => [0, -1, 1], 3 => [0, 1, 2], _ => [] };
        if (at.Length == 0) return false;
        for (var s = 0; s < 3; s++)
        {
            if (at[s] >= 0 && words[at[s]] != "-") entry.Set(kind.Fields[kind.IndexOf(Stations.All[s])], words[at[s]]);
        }
        new LooseWords(entry).Place(WithUnits(kind, [.. loose.Skip(words.Count)]));
        return true;
    }

    private static (string Name, string Value)? Assignment(string token)
    {
        var i = token.IndexOf('=', StringComparison.Ordinal);
        return i > 0 && token[..i].All(c => char.IsLetterOrDigit(c) || c is '-' or '.') ? (token[..i], token[(i + 1)..]) : null;
    }

    /// <summary>Puts a number and the unit typed after it together again.</summary>
    private static List<string> WithUnits(KindSpec kind, List<string> loose)
    {
        var joined = new List<string>();
        foreach (var token in loose)
        {
            var unit = joined.Count > 0 && joined[^1].Length > 0 && joined[^1].Any(char.IsDigit) && token.Length > 0 && (char.IsLetter(token[0]) || token[0] == '"')
                && !kind.Fields.Any(f => f.Form is FieldForm.Word or FieldForm.Words && FieldText.Word(f, token) is not null)
                && !kind.Fields.Any(f => f.Form == FieldForm.Flag && f.Name == token) && !kind.Fields.Any(f => f.Form is FieldForm.Text or FieldForm.Texts && f.Required);
            var fraction = joined.Count > 0 && token.Contains('/', StringComparison.Ordinal) && joined[^1].All(char.IsDigit);
            if (unit || fraction) joined[^1] += " " + token;
            else joined.Add(token);
        }
        return joined;
    }
}
