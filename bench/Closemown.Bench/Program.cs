using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Closemown.Bench.Workshop;

if (args is ["workshop", ..]) return WorkshopRun.Print(args[1..]);
if (Closemown.Bench.Keeping.KeepingRun.Print(args) is { } kept) return kept;

// In this process: building a program of its own for each benchmark would cost more than the benchmarks.
var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args.Length > 0 ? args : ["--filter", "*"], config);
return 0;
