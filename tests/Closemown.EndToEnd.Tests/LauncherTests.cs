using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class LauncherTests
{
    [Fact]
    public void The_second_call_of_the_launcher_builds_nothing()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "the launcher is a shell script");
        using var bench = new Bench();
        var launcher = Path.Combine(Bench.Root, "closemown");
        // The first may build, beside all other tests on few cores.
        Assert.Equal(0, bench.Start(launcher, ["reckon", "--json"], null, null, minutes: 8).Exit);
        var second = bench.Start(launcher, ["reckon", "--json"], null, null);
        Assert.Equal((0, ""), (second.Exit, second.Error));
        Assert.Contains("\"clip\"", second.Out, StringComparison.Ordinal);
    }
}
