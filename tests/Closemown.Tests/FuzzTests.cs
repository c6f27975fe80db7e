using Closemown.Fuzzing;
using Xunit;

namespace Closemown.Tests;

/// <summary>Some thousand mutated inputs for every reader; hours of it, led by what they reach, are run by the bench.</summary>
public sealed class FuzzTests
{
    private const int Seed = 20261130;

    /// <summary>A second or two for each, on one core.</summary>
    private static readonly Dictionary<string, int> Runs = new()
    {
        ["pipe"] = 20,
        ["book-file"] = 30,
        ["advice-id"] = 300,
        ["settings"] = 500,
        ["import"] = 600,
        ["quantity"] = 600,
        ["typed"] = 1000,
        ["weather"] = 1000,
        ["form"] = 2000,
        ["entry"] = 3000,
    };

    private const int Otherwise = 3000;

    public static TheoryData<string> Targets => [.. FuzzTargets.Names];

    [Theory]
    [MemberData(nameof(Targets))]
    public void No_mutated_input_breaks_a_law(string name)
    {
        var crashes = PlainRun.Go(FuzzTargets.Of(name)!, Seed, Runs.GetValueOrDefault(name, Otherwise));
        Assert.True(crashes.Count == 0, string.Join("\n\n", crashes.Select(c => $"{c.Shown()}\n{c.Told}")));
    }

    [Fact]
    public void A_broken_law_is_found_and_made_small()
    {
        var crashes = PlainRun.Go(new Brittle(), Seed, 5000);
        Assert.Equal(["no X", "InvalidOperationException"], crashes.Select(c => c.Signature).Order(StringComparer.Ordinal).Reverse());
        Assert.All(crashes, c => Assert.Single(c.Input));
    }

    [Fact]
    public void The_same_seed_makes_the_same_inputs()
    {
        var (one, two, other) = (new Brittle(), new Brittle(), new Brittle());
        PlainRun.Go(one, Seed, 500);
        PlainRun.Go(two, Seed, 500);
        PlainRun.Go(other, Seed + 1, 500);
        Assert.Equal(one.Sum, two.Sum);
        Assert.NotEqual(one.Sum, other.Sum);
    }

    /// <summary>Stands neither an X nor a byte of 0xFF.</summary>
    private sealed class Brittle() : FuzzTarget("brittle")
    {
        public long Sum { get; private set; }

        public override IReadOnlyList<byte[]> Seeds { get; } = ["some text"u8.ToArray(), "another"u8.ToArray()];

        public override IReadOnlyList<byte[]> Words { get; } = ["X"u8.ToArray(), [0xFF], "word"u8.ToArray()];

        public override void Run(byte[] input)
        {
            unchecked
            {
                foreach (var b in input) Sum = (Sum * 31) + b;
            }
            Laws.Must(!input.Contains((byte)'X'), "no X", "");
            if (input.Contains((byte)0xFF)) throw new InvalidOperationException();
        }
    }
}
