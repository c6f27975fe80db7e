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
        ["measure"] = "measure straightedge centre=0.03mm",
        ["service"] = "service knife-screws",
        ["area"] = "area green cool 120m2 lat=51.5",
        ["mow"] = "mow 20min",
        ["canopy"] = "canopy 5mm after ruler",
        ["look"] = "look pale clean",
        ["clippings"] = "clippings 12 l",
        ["weather"] = "weather 4..15 rain 3",
        ["water"] = "water 5mm",
        ["feed"] = "feed 1.5 g/m2",
        ["treat"] = "treat growth regulator label as printed",
        ["work"] = "work topdress 1 kg/m2",
        ["soil-test"] = "soil-test P 20 K 60",
        ["pace"] = "pace up 2.4 down 2.9",
        ["wish"] = "wish 5mm tue fri",
        ["decline"] = "decline next-…",
    };

    /// <summary>Puts what was typed into the entry.</summary>
    /// <exception cref="CliFault">A word fits nowhere.</exception>
    public static void Read(TypedEntry entry, IReadOnlyList<string> typed)
    {
        var loose = new List<string>();
        foreach (var token in FieldOptions.Assigned(entry.Kind, typed).Where(t => t.Length > 0))
        {
            if (Assignment(token) is not var (name, value)) loose.Add(token);
            else if (Place(entry, name, value)) continue;
            else if (FieldNames.Find(entry.Kind, name) is { } field) entry.Set(field, value);
            else if (entry.Kind.OtherFieldsAreNumbers) entry.SetOther(name, value);
            else throw FieldNames.Unknown(entry.Kind, name);
        }
        loose = DayWords.Extract(entry, loose);
        if (SideWords.Place(entry, loose) || SpotWords.Place(entry, loose)) return;
        if (!Stationwise(entry, loose)) new LooseWords(entry).Place(Amounts.Join(entry.Kind, entry.Style, loose));
    }

    /// <summary>"area=green" and "unit=mower" beside the fields; an area in figures is the size of one.</summary>
    private static bool Place(TypedEntry entry, string name, string value)
    {
        if (entry.Kind.IndexOf(name) >= 0 || Amounts.IsNumber(value)) return false;
        if (name == "area" && entry.Kind.Belongs is Belongs.Area or Belongs.UnitAndArea) entry.Area = value;
        else if (name == "unit" && entry.Kind.Belongs is Belongs.Unit or Belongs.UnitAndArea) entry.Unit = value;
        else return false;
        return true;
    }

    /// <summary>Two words at the stations are left and right, one is everywhere, three are in order.</summary>
    private static bool Stationwise(TypedEntry entry, List<string> loose)
    {
        var kind = entry.Kind;
        if (!kind.HasStations || kind.Fields[kind.IndexOf(Stations.Left)] is not { Form: FieldForm.Word or FieldForm.GoNoGo } left) return false;
        var words = loose.TakeWhile(w => w == "-" || (left.Form == FieldForm.Word ? FieldText.Word(left, w) is not null : w.Contains("..", StringComparison.Ordinal))).ToList();
        int[] at = words.Count switch { 1 => [0, 0, 0], 2 => [0, -1, 1], 3 => [0, 1, 2], _ => [] };
        if (at.Length == 0) return false;
        for (var s = 0; s < 3; s++)
        {
            if (at[s] >= 0 && words[at[s]] != "-") entry.Set(kind.Fields[kind.IndexOf(Stations.All[s])], words[at[s]]);
        }
        new LooseWords(entry).Place(Amounts.Join(kind, entry.Style, [.. loose.Skip(words.Count)]));
        return true;
    }

    private static (string Name, string Value)? Assignment(string token)
    {
        var i = token.IndexOf('=', StringComparison.Ordinal);
        return i > 0 && token[..i].All(c => char.IsLetterOrDigit(c) || c is '-' or '.' or '_') ? (token[..i], token[(i + 1)..]) : null;
    }
}
