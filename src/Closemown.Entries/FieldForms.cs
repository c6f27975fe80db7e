namespace Closemown.Entries;

/// <summary>Short ways to write a row of the field tables.</summary>
internal static class FieldForms
{
    public static Field<double> Number(string name, double low, double high, string help) =>
        new(name, FieldForm.Number, help) { Low = low, High = high };

    public static Field<double> Whole(string name, double low, double high, string help) =>
        new(name, FieldForm.Whole, help) { Low = low, High = high };

    public static Field<double> HalfSteps(string name, double low, double high, string help) =>
        new(name, FieldForm.HalfSteps, help) { Low = low, High = high };

    public static Field<string> Word(string name, string help, params string[] words) => new(name, FieldForm.Word, help) { Words = words };

    public static Field<IReadOnlyList<string>> Words(string name, string help, params string[] words) => new(name, FieldForm.Words, help) { Words = words };

    public static Field<string> Text(string name, string help) => new(name, FieldForm.Text, help);

    public static Field<IReadOnlyList<string>> Texts(string name, string help) => new(name, FieldForm.Texts, help);

    public static Field<bool> Flag(string name, string help) => new(name, FieldForm.Flag, help);

    public static Field<string> Date(string name, string help) => new(name, FieldForm.Date, help);

    public static Field<IReadOnlyList<string>> Dates(string name, string help) => new(name, FieldForm.Dates, help);

    public static Field<IReadOnlyList<double>> Numbers(string name, int count, double low, double high, string help) =>
        new(name, FieldForm.Numbers, help) { Count = count, Low = low, High = high };

    public static Field<IReadOnlyList<double>> NumberOrNumbers(string name, double low, double high, string help) =>
        new(name, FieldForm.NumberOrNumbers, help) { Low = low, High = high };

    public static Field<GoNoGo> GoNoGoOf(string name, double low, double high, string help) =>
        new(name, FieldForm.GoNoGo, help) { Low = low, High = high };

    public static Field<IReadOnlyDictionary<string, Prior>> PriorsOf(string name, string help) => new(name, FieldForm.Priors, help);

    /// <summary>The same, kept in the record and read by no model.</summary>
    public static Field<T> OnlyKept<T>(this Field<T> field) => field with { Kept = true };

    /// <summary>The same, without which an entry is refused.</summary>
    public static Field<T> Must<T>(this Field<T> field) => field with { Required = true };
}
