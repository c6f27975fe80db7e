namespace Closemown.Entries;

/// <summary>Short ways to write a row of the field tables.</summary>
internal static class FieldForms
{
    public static FieldSpec Number(string name, double low, double high, string help) =>
        new(name, FieldForm.Number, help) { Low = low, High = high };

    public static FieldSpec Whole(string name, double low, double high, string help) =>
        new(name, FieldForm.Whole, help) { Low = low, High = high };

    public static FieldSpec HalfSteps(string name, double low, double high, string help) =>
        new(name, FieldForm.HalfSteps, help) { Low = low, High = high };

    public static FieldSpec Word(string name, string help, params string[] words) => new(name, FieldForm.Word, help) { Words = words };

    public static FieldSpec Words(string name, string help, params string[] words) => new(name, FieldForm.Words, help) { Words = words };

    public static FieldSpec Text(string name, string help) => new(name, FieldForm.Text, help);

    public static FieldSpec Texts(string name, string help) => new(name, FieldForm.Texts, help);

    public static FieldSpec Flag(string name, string help) => new(name, FieldForm.Flag, help);

    public static FieldSpec Date(string name, string help) => new(name, FieldForm.Date, help);

    public static FieldSpec Numbers(string name, int count, double low, double high, string help) =>
        new(name, FieldForm.Numbers, help) { Count = count, Low = low, High = high };

    public static FieldSpec Must(this FieldSpec field) => field with { Required = true };

    /// <summary>left, centre, right with the same words.</summary>
    public static FieldSpec[] AtStations(params string[] words) =>
        [.. Stations.All.Select(s => Word(s, $"what was found {(s == Stations.Centre ? "in the centre" : "at the " + s)}", words))];

    /// <summary>What any check may carry.</summary>
    public static FieldSpec[] AnyCheck { get; } =
    [
        Text("blade", "which blade, counted from a mark"),
        Word("state", "state of the machine", "cold", "just-run", "sun"),
    ];
}
