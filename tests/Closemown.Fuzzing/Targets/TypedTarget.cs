using System.Text;
using Closemown.Cli;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Typing;

namespace Closemown.Fuzzing;

/// <summary>Words typed after <c>add</c>: the kind, then words and numbers in any order.</summary>
internal sealed class TypedTarget() : FuzzTarget("typed")
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly WritingStyle Comma = new() { DecimalSign = ',', Words = Wording.UK, Height = HeightUnit.InchFraction, Gap = GapUnit.Thou };

    private static readonly string[] More =
    [
        "mow 20min green", "mowed yesterday 1 h 20 min", "wish 4 mm by 1 June tue fri match 9 May and 12 May", "topdress 1 kg/m2 green", "feeler left=30..50um centre=..40", "rain 5mm", "canopy 5 5.5 6 after", "canopy 5 to 6 mm before",
        "weather 39F..59F wind 10km/h dry yesterday", "unit mower blades=10 click=\"0.0007 in\" priors=\"openingUmPerHour 3±2; clickUm 18 +- 1\"", "area \"front lawn\" cool 120m2 lat=51.5 lon=-2,8", "soil-test P 20 K 60 ppm", "clicks 2 out both 1/2 in",
    ];

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(ShortForms.Examples.Values.Concat(More).SelectMany(s => (string[])[s, "," + s]));

    public override IReadOnlyList<byte[]> Words { get; } =
        Vocabulary.With(ShortForms.Examples.Values.Concat(More).SelectMany(s => s.Split(' ')).Select(w => $" {w} ").Concat(QuantityReaders.Units).Concat(["=", "..", "±", " - ", " both ", " left ", " to ", " by ", " match ", " label ", " and "]));

    public override int Longest => 1500;

    public override int Weight => 2;

    public override void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        // A comma in front stands for who writes numbers with commas.
        var style = text.StartsWith(',') ? Comma : WritingStyle.Plain;
        var words = text.TrimStart(',').Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.Replace('_', ' ')).ToList();
        if (words.Count == 0) return;
        try
        {
            var entry = Typed(words, style);
            foreach (var (_, _, question) in entry.Doubtful()) Laws.Must(question.Why.Length > 0, "a doubtful value is told why", text);
            Taken(entry, style);
        }
        catch (TypedFault fault)
        {
            Laws.Told(fault.Message, fault.Remedy);
        }
    }

    private static TypedEntry Typed(List<string> words, WritingStyle style)
    {
        if (KindNames.Find(words[0]) is not var (kind, implied)) throw KindNames.None(words[0]);
        var today = DateOnly.FromDateTime(Now.DateTime);
        var entry = new TypedEntry(kind, style, new BookNames(() => (["green", "front lawn"], ["mower", "old one"])), today);
        IReadOnlyList<string> rest = [.. implied, .. words.Skip(1)];
        ShortForms.Read(entry, kind.Name == WeatherEntry.Name ? WeatherWords.Read(rest, today, style) : rest);
        return entry;
    }

    private static void Taken(TypedEntry typed, WritingStyle style)
    {
        var json = typed.Json();
        if (typed.Unit is { } unit) json["unit"] = unit;
        if (typed.Area is { } area) json["area"] = area;
        var context = new EntryContext { NewId = new Book.SequentialIds().Next, Now = () => Now, OnlyUnit = () => "mower", OnlyArea = () => "green" };
        Laws.Faults(EntryReader.Read(json.ToJsonString(), context, out var entry), entry);
        if (entry is null) return;
        Laws.ReadBack(entry);
        Laws.Must(EntryWords.Short(entry, style).Length > 0, "an entry can be told in words", entry.Json);
    }
}
