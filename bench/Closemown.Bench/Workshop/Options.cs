using System.Globalization;
using Closemown.Advice;

namespace Closemown.Bench.Workshop;

/// <summary>Options of the workshop's commands, the same for all of them.</summary>
internal sealed class Options
{
    private static readonly string[] Known =
    [
        "--units", "--mowings", "--first", "--hours", "--fingers", "--strip-off", "--mistakes", "--clean-sd", "--shared", "--world", "--price", "--check-share", "--guard", "--steel-price",
        "--strategy", "--start", "--jobs", "--seed", "--trials", "--per-season", "--show", "--variant",
        "--settings", "--probability",
        "--seasons", "--days", "--traces", "--horizon", "--scalp-guard", "--wide", "--above-wish", "--stressed-share", "--reads",
    ];

    private readonly string[] args;

    public Options(string[] args)
    {
        this.args = args;
        // A word spelt wrong would run for minutes and answer another question.
        if (args.FirstOrDefault(a => a.StartsWith("--", StringComparison.Ordinal) && !Known.Contains(a)) is not { } unknown) return;
        Console.Error.WriteLine($"There is no option {unknown}: {string.Join(", ", Known)}.");
        Environment.Exit(2);
    }

    public int Whole(string name, int byDefault) => (int)Number(name, byDefault);

    public double Number(string name, double byDefault) => Word(name) is { } text ? double.Parse(text, CultureInfo.InvariantCulture) : byDefault;

    public string? Word(string name) => Array.IndexOf(args, name) is var i and >= 0 && i + 1 < args.Length ? args[i + 1] : null;

    public bool Has(string name) => args.Contains(name);

    /// <summary>Those of a list that an option names, parted by commas; all where it is not given.</summary>
    public IReadOnlyList<T> Named<T>(string option, IReadOnlyList<T> all, Func<T, string> name)
    {
        if (Word(option)?.Split(',') is not { } wanted) return all;
        return wanted.FirstOrDefault(w => all.All(x => name(x) != w)) is { } unknown
            ? throw new ArgumentException($"There is no {unknown} for {option}: {string.Join(", ", all.Select(name))}.")
            : [.. all.Where(x => wanted.Contains(name(x)))];
    }

    public int Jobs => Whole("--jobs", Environment.ProcessorCount);

    public int[] Seeds(int byDefault) => [.. Enumerable.Range(Whole("--first", 1), Whole("--units", byDefault))];

    public Circumstances Circumstances(double hours = 1) => Worlds.In(Word("--world") ?? Worlds.Own, new(Number("--hours", hours), Number("--fingers", 1), Number("--strip-off", 0), Number("--mistakes", 0), Number("--clean-sd", 5), Number("--shared", 0.75)));

    public AdviceSettings Settings => AdviceSettings.Default with
    {
        PriceOfMinute = Number("--price", 1),
        CheckShare = Number("--check-share", AdviceSettings.Default.CheckShare),
        GuardUm = Number("--guard", AdviceSettings.Default.GuardUm),
        KnifeUm = AdviceSettings.Default.KnifeUm * Number("--steel-price", 1),
        ReelUm = AdviceSettings.Default.ReelUm * Number("--steel-price", 1),
    };
}
