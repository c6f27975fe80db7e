using System.Reflection;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>A kind is a class of its fields: each field stands there once, under its name in the contract.</summary>
public sealed class FieldKeysTests
{
    private static readonly Type[] Classes =
        [.. typeof(Kinds).Assembly.GetTypes().Where(t => t is { IsAbstract: true, IsSealed: true, IsPublic: true } && t.GetProperty("Kind", BindingFlags.Public | BindingFlags.Static)?.PropertyType == typeof(KindSpec))];

    private static IEnumerable<(string Name, FieldSpec Field)> Keys(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Static).Where(p => p.GetValue(null) is FieldSpec).Select(p => (p.Name, (FieldSpec)p.GetValue(null)!));

    private static KindSpec Kind(Type type) => (KindSpec)type.GetProperty("Kind")!.GetValue(null)!;

    [Fact]
    public void Every_kind_has_a_class_and_every_class_a_kind() =>
        Assert.Equal(Kinds.All.Select(k => k.Name).Order(StringComparer.Ordinal), Classes.Select(c => Kind(c).Name).Order(StringComparer.Ordinal));

    [Fact]
    public void A_class_holds_the_fields_of_its_kind_and_no_others()
    {
        foreach (var type in Classes)
        {
            var shared = Keys(typeof(CheckFields)).Select(k => k.Field).ToHashSet();
            Assert.Equal(Kind(type).Fields.Where(f => !shared.Contains(f)), Keys(type).Select(k => k.Field));
            Assert.Equal(Kind(type).Name, (string)type.GetField("Name")!.GetRawConstantValue()!);
            Assert.All(Keys(type), k => Assert.Equal(k.Field.Name == "name" ? "NameText" : char.ToUpperInvariant(k.Field.Name[0]) + k.Field.Name[1..], k.Name));
        }
    }

    [Fact]
    public void An_entry_is_read_by_its_keys_and_has_nothing_under_others()
    {
        var mow = Lines.Entry("""{"kind":"mow","hours":1.5,"cutMm":5}""", 1);
        Assert.Equal((1.5, 5, null), (mow[MowEntry.Hours], mow[MowEntry.CutMm], mow[MowEntry.Passes]));
        Assert.Null(mow[LapEntry.Minutes]);
        Assert.True(mow.Has(MowEntry.Hours));
        Assert.False(mow.Has(MowEntry.Passes));
        Assert.True(mow.Is(MowEntry.Kind));
        Assert.False(mow.Is(LapEntry.Kind));
        // A field that several kinds have is read by any one's key.
        Assert.Equal(5, mow[WishEntry.CutMm]);
        var spots = Lines.Entry("""{"kind":"canopy","mm":5.5,"when":"after"}""", 2);
        Assert.Equal([5.5], spots[CanopyEntry.Mm]!);
    }
}
