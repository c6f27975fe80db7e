using Closemown.Browser.Tests;
using Xunit.MicrosoftTestingPlatform;

try
{
    return args.FirstOrDefault() switch
    {
        "first-view" => await FirstViewRun.Print(args[1..]),
        "first-use" => await FirstUseRun.Print(args[1..]),
        "screenshots" => await ReadmeShots.Take(),
        _ => await TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions),
    };
}
catch (ChromiumMissingException e)
{
    await Console.Error.WriteLineAsync(e.Message);
    return 69;
}
