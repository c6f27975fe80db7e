using System.Text;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;

namespace Closemown.Fuzzing;

/// <summary>The names of advices, as anybody may write them; what they encode may be written in clear after a bar: "next-0-0-|…".</summary>
internal sealed class AdviceIdTarget() : FuzzTarget("advice-id")
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(
    [
        AdviceId.Of(new NextQuestion("mower", Now), new("contact") { Stations = [0, 2] }, new(0, 0)),
        AdviceId.Of(new NextQuestion("a\nb", Now, true, 0.5), new("clicks") { Left = 2, Right = -1 }, new(3, 0xABCDEF0123456789)),
        AdviceId.Of(new AimQuestion("mower", Now, 5, null, "green"), new("gauge"), new(0, 0)),
        $"next-0-0-|{Now.UtcTicks}\n0\n1\nmower", $"height-0-{HashChain.Genesis[..Math.Min(8, HashChain.Genesis.Length)]}-|{Now.UtcTicks}\n5\n\n0.05\n0.85\n\nmower",
    ]);

    public override int Longest => 600;

    public override void Run(byte[] input)
    {
        var id = Encoding.UTF8.GetString(input);
        if (id.IndexOf('|', StringComparison.Ordinal) is >= 0 and var bar)
            id = id[..bar] + Convert.ToBase64String(Encoding.UTF8.GetBytes(id[(bar + 1)..])).TrimEnd('=').Replace('+', '.').Replace('/', '_');
        var name = AdviceId.Read(id);
        if (name is { Chain: null, Step: { } step })
        {
            var state = new BookState(name.Count, name.Sum << 16);
            var again = AdviceId.Read(name.Steel is { } q ? AdviceId.Of(q, step, state) : AdviceId.Of(name.Setting!, step, state));
            Laws.Must(again is not null && again.Steel == name.Steel && again.Setting == name.Setting && again.Count == name.Count && again.Sum == name.Sum && again.Step!.Do == step.Do,
                "an advice id reads back", id);
        }
        Laws.Must(AdviceId.UnitOf(id) == name?.Unit, "an advice id names its unit", id);
        using var book = new MemoryBook();
        var watched = new WatchedTalk(book);
        Laws.Answer(watched.With.Say(new JsonObject { ["ask"] = "why", ["id"] = id }.ToJsonString()));
        watched.Throw();
    }
}
