using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Closemown.Bench.Fuzzing;
using Closemown.Bench.Green;
using Closemown.Bench.Heights;
using Closemown.Bench.Heights.Cuts;
using Closemown.Bench.Keeping;
using Closemown.Bench.Mutating;
using Closemown.Bench.Serving;
using Closemown.Bench.Speed;
using Closemown.Bench.Workshop;

// What is measured through ./closemown is the program compiled ahead.
Environment.SetEnvironmentVariable("CLOSEMOWN_AHEAD", "wait");

Func<string[], int>? run = args.FirstOrDefault() switch
{
    "workshop" => WorkshopRun.Print,
    "season" => SeasonPrinted.Print,
    "failures" => Failures.Print,
    "misread" => Flips.Print,
    "home" => HomeSeason.Print,
    "prices" => Prices.Print,
    "coverage" => CoverageRun.Print,
    "first-evening" => FirstEvening.Print,
    "ablation" => Ablations.Print,
    "heights" => HeightsRun.Print,
    "cuts" => CutsRun.Print,
    "green" => GreenRun.Print,
    "plan-speed" => PlanSpeed.Print,
    "speed" => SpeedRun.Print,
    "cold" => ColdStart.Print,
    "serve-speed" => ServeSpeed.Print,
    "serve-load" => ServeLoad.Print,
    "fuzz" => FuzzRun.Print,
    "fuzz-child" => FuzzChild.Run,
    "pipe-lines" => PipeLinesRun.Print,
    "mutate" => MutateRun.Print,
    "mutate-child" => MutateChild.Run,
    "serve-siege" => words => ServeLoad.Print([.. words, "--idle", "200", "--slow", "50"]),
    _ => null,
};
if (run is not null) return run(args[1..]);
if (KeepingRun.Print(args) is { } kept) return kept;

// In this process: building a program of its own for each benchmark would cost more than the benchmarks.
var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(typeof(Closemown.Bench.DemoBook).Assembly).Run(args.Length > 0 ? args : ["--filter", "*"], config);
return 0;
