using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Closemown.Bench.Speed;
using Closemown.Bench.Workshop;

if (args is ["workshop", ..]) return WorkshopRun.Print(args[1..]);
if (args is ["speed", ..]) return SpeedRun.Print(args[1..]);
if (args is ["cold", ..]) return ColdStart.Print(args[1..]);

// In this process: building a program of its own for each benchmark would cost more than the benchmarks.
var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args.Length > 0 ? args : ["--filter", "*"], config);
return 0;
