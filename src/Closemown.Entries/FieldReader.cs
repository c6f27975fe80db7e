using System.Globalization;
using System.Text.Json;
using Closemown.Quantities;

namespace Closemown.Entries;

/// <summary>Reads the value of one field, and says what is wrong with it.</summary>
/// <remarks>Where there is no input to be asked about, the value comes out of a book: no limit holds, only its form.</remarks>
internal static class FieldReader
{
    private const int MaxItems = 1000;
    private const int MaxText = 2000;

    public static object? Read(KindSpec kind, FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults)
    {
        var before = faults.Count;
        var read = f.Form switch
        {
            FieldForm.Number or FieldForm.Whole or FieldForm.HalfSteps => Number(kind, f, value, input, faults),
            FieldForm.Flag => value.ValueKind is JsonValueKind.True or JsonValueKind.False ? value.GetBoolean() : Fail(f, value, faults, "true or false"),
            FieldForm.Word => Word(f, value, faults),
            FieldForm.Text => Text(f, value, input, faults),
            FieldForm.Date => Date(f, value, faults),
            FieldForm.Words => List(f, value, input, faults, (e, x) => Word(f, e, x) as string),
            FieldForm.Texts => value.ValueKind == JsonValueKind.String
                ? Text(f, value, input, faults) is string one ? new[] { one } : null
                : List(f, value, input, faults, (e, x) => Text(f, e, input, x) as string),
            FieldForm.Dates => List(f, value, input, faults, (e, x) => Date(f, e, x) as string),
            FieldForm.Numbers => Numbers(kind, f, value, input, faults),
            FieldForm.NumberOrNumbers => value.ValueKind == JsonValueKind.Array ? Numbers(kind, f, value, input, faults) : Number(kind, f, value, input, faults),
            FieldForm.GoNoGo => Feeler(kind, f, value, input, faults),
            FieldForm.Priors => Priors(f, value, faults),
            _ => throw new InvalidOperationException($"Bug in FieldReader: form {f.Form}."),
        };
        return faults.Count == before ? read : null;
    }

    private static object? Fail(FieldSpec f, JsonElement value, List<EntryFault> faults, string wanted)
    {
        faults.Add(new(FaultCodes.BadValue, f.Name, $"{Spelling.Clip(value.GetRawText())} is not {wanted}.", $"{f.Name} is {f.Help}: write {wanted}."));
        return null;
    }

    private static object? Number(KindSpec kind, FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults)
    {
        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out var x) || !double.IsFinite(x)) return Fail(f, value, faults, "a number");
        if (f.Form == FieldForm.Whole && x != Math.Floor(x)) return Fail(f, value, faults, "a whole number");
        if (f.Form == FieldForm.HalfSteps && x * 2 != Math.Floor(x * 2)) return Fail(f, value, faults, "a whole or half number of steps");
        if (input is not null && (x < f.Low || x > f.High))
        {
            faults.Add(new(FaultCodes.BadValue, f.Name, $"{EntryReader.Invariant(x)} is outside {EntryReader.Invariant(f.Low)} to {EntryReader.Invariant(f.High)}.",
                $"{f.Name} is {f.Help}: check the number and its unit."));
            return null;
        }
        if (input?.Asks(f.Name) == true) AskSlip(kind, f, x, faults);
        return x == 0 ? 0.0 : x;                 // no minus zero: it would print as another text
    }

    private static void AskSlip(KindSpec kind, FieldSpec f, double x, List<EntryFault> faults)
    {
        var name = f.Name[(f.Name.IndexOf('.', StringComparison.Ordinal) + 1)..];
        if (PlausibleRanges.Find(kind.Name, name) is not { } range || UnitSlip.Check(x, range) is not { } question) return;
        var offers = question.Candidates.Count == 0 ? "" : $" Did you mean {string.Join(", or ", question.Candidates.Select(c => c.Reading))}?";
        var values = question.Candidates.Count == 0 ? "" : $" ({string.Join(" or ", question.Candidates.Select(c => EntryReader.Invariant(Math.Round(c.Value, 6))))})";
        faults.Add(new(FaultCodes.Implausible, f.Name, question.Why + offers, $"Correct {f.Name}{values}, or add \"confirmed\": [\"{f.Name}\"] if it is right as it is."));
    }

    private static object? Word(FieldSpec f, JsonElement value, List<EntryFault> faults)
    {
        if (value.ValueKind == JsonValueKind.String)
        {
            var word = value.GetString()!;
            if (f.Words.Contains(word)) return word;
            var near = Spelling.Nearest(word, f.Words);
            if (near is not null)
            {
                faults.Add(new(FaultCodes.BadValue, f.Name, $"There is no \"{Spelling.Clip(word)}\" for {f.Name}.", $"Did you mean \"{near}\"?"));
                return null;
            }
        }
        return Fail(f, value, faults, "one of " + string.Join(", ", f.Words));
    }

    private static object? Text(FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults)
    {
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { } text)
        {
            if (input is null) return text;
            if (TextSigns.Steering(text, lines: true) is { } steering)
            {
                faults.Add(new(FaultCodes.BadValue, f.Name, $"The text of {f.Name} cannot be kept. {steering}", "Take that sign out."));
                return null;
            }
            if (text.Length is > 0 and <= MaxText) return text;
        }
        return Fail(f, value, faults, $"a text of 1 to {MaxText} characters");
    }

    private static object? Date(FieldSpec f, JsonElement value, List<EntryFault> faults)
    {
        if (value.ValueKind == JsonValueKind.String && DateOnly.TryParseExact(value.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            return value.GetString();
        return Fail(f, value, faults, "a date like 2026-05-03");
    }

    private static object? List(FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults, Func<JsonElement, List<EntryFault>, string?> one)
    {
        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0 || (input is not null && value.GetArrayLength() > MaxItems))
            return Fail(f, value, faults, $"a list of 1 to {MaxItems} texts");
        var items = new List<string>();
        foreach (var e in value.EnumerateArray())
        {
            if (one(e, faults) is not { } item) return null;
            items.Add(item);
        }
        return items.ToArray();
    }

    private static object? Numbers(KindSpec kind, FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults)
    {
        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0 || (input is not null && value.GetArrayLength() > MaxItems)
            || (f.Count > 0 && value.GetArrayLength() != f.Count))
            return Fail(f, value, faults, f.Count > 0 ? $"a list of {f.Count} numbers" : $"a list of 1 to {MaxItems} numbers");
        var items = new List<double>();
        foreach (var e in value.EnumerateArray())
        {
            if (Number(kind, f, e, input, faults) is not double x) return null;
            items.Add(x);
        }
        if (f.Count > 1 && !items.SequenceEqual(items.Order()) && f.Name != "edgeAtMm") return Fail(f, value, faults, "a list from small to large");
        return items.ToArray();
    }

    private static object? Feeler(KindSpec kind, FieldSpec f, JsonElement value, Asked? input, List<EntryFault> faults)
    {
        if (value.ValueKind != JsonValueKind.Object) return Fail(f, value, faults, "an object like {\"goUm\":30,\"noGoUm\":50}");
        double?[] limits = [null, null];
        string[] names = ["goUm", "noGoUm"];
        for (var i = 0; i < 2; i++)
        {
            if (!value.TryGetProperty(names[i], out var v) || v.ValueKind == JsonValueKind.Null) continue;
            if (Number(kind, f with { Name = $"{f.Name}.{names[i]}", Form = FieldForm.Number }, v, input, faults) is not double x) return null;
            limits[i] = x;
        }
        if (limits is [null, null]) return Fail(f, value, faults, "an object with goUm, noGoUm or both");
        if (limits[0] >= limits[1]) return Fail(f, value, faults, "an object whose goUm is below its noGoUm");
        return new GoNoGo(limits[0], limits[1]);
    }

    private static object? Priors(FieldSpec f, JsonElement value, List<EntryFault> faults)
    {
        if (value.ValueKind != JsonValueKind.Object) return Fail(f, value, faults, "an object like {\"openingUmPerHour\":[3,2]}");
        var priors = new SortedDictionary<string, Prior>(StringComparer.Ordinal);
        foreach (var p in value.EnumerateObject())
        {
            if (!PriorNames.All.Contains(p.Name))
            {
                var near = Spelling.Nearest(p.Name, PriorNames.All);
                faults.Add(new(FaultCodes.BadValue, $"{f.Name}.{Spelling.Clip(p.Name)}", "There is no starting value of that name.", near is null ? $"Names are {string.Join(", ", PriorNames.All)}." : $"Did you mean \"{near}\"?"));
                return null;
            }
            if (p.Value.ValueKind != JsonValueKind.Array || p.Value.GetArrayLength() != 2 || p.Value.EnumerateArray().Any(e => e.ValueKind != JsonValueKind.Number)
                || p.Value[0].GetDouble() is var mean && !double.IsFinite(mean) || p.Value[1].GetDouble() is not (> 0 and < 1e9))
                return Fail(f with { Name = $"{f.Name}.{p.Name}" }, p.Value, faults, "[mean, sd] with sd above 0");
            priors[p.Name] = new(p.Value[0].GetDouble(), p.Value[1].GetDouble());
        }
        return priors;
    }
}
