using System.Text;
using Closemown.Entries;
using Closemown.Typing;

namespace Closemown.Fuzzing;

/// <summary>Names of kinds and fields as people say them: "kind field".</summary>
internal sealed class NamesTarget() : FuzzTarget("names")
{
    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(Kinds.All.SelectMany(k => k.Fields.Select(f => $"{k.Name} {f.Name}")).Concat(["mowed time", "topdress rate", "rain amount", "canopy left.goUm"]));

    public override int Longest => 200;

    public override void Run(byte[] input)
    {
        var words = Encoding.UTF8.GetString(input).Split(' ', 2);
        if (KindNames.Find(words[0]) is not var (kind, _))
        {
            var none = KindNames.None(words[0]);
            Laws.Told(none.Message, none.Remedy);
            return;
        }
        var name = words[^1];
        if (FieldNames.Find(kind, name) is { } field)
        {
            Laws.Must(FieldNames.Find(kind, field.Name) == field, "a field is found by its own name", $"{kind.Name} {field.Name}");
            return;
        }
        var unknown = FieldNames.Unknown(kind, name);
        Laws.Told(unknown.Message, unknown.Remedy);
    }
}
