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
        AdviceId.Of(new NextQuestion("mower", Now), 0, HashChain.Genesis), AdviceId.Of(new NextQuestion("a\nb", Now, true, 0.5), 3, "abcdef0123456789"), AdviceId.Of(new AimQuestion("mower", Now, 5, null, "green"), 0, HashChain.Genesis),
        $"next-0-0-|{Now.UtcTicks}\n0\n1\nmower", $"height-0-{HashChain.Genesis[..Math.Min(8, HashChain.Genesis.Length)]}-|{Now.UtcTicks}\n5\n\n0.05\n0.85\n\nmower",
    ]);

    public override int Longest => 600;

    public override void Run(byte[] input)
    {
        var id = Encoding.UTF8.GetString(input);
        if (id.IndexOf('|', StringComparison.Ordinal) is >= 0 and var bar)
            id = id[..bar] + Convert.ToBase64String(Encoding.UTF8.GetBytes(id[(bar + 1)..])).TrimEnd('=').Replace('+', '.').Replace('/', '_');
        if (AdviceId.TryRead(id, out var steel, out var count, out var hash))
            Laws.Must(AdviceId.TryRead(AdviceId.Of(steel!, count, hash), out var again, out var c, out _) && again == steel && c == count, "an advice id reads back", id);
        if (AdviceId.TryReadAim(id, out var aim, out count, out hash))
            Laws.Must(AdviceId.TryReadAim(AdviceId.Of(aim!, count, hash), out var again, out var c, out _) && again == aim && c == count, "an advice id reads back", id);
        Laws.Must(AdviceId.UnitOf(id) == (steel?.Unit ?? aim?.Unit), "an advice id names its unit", id);
        using var book = new MemoryBook();
        Laws.Answer(PipeTarget.Talk(book).Say(new JsonObject { ["ask"] = "why", ["id"] = id }.ToJsonString()));
    }
}
