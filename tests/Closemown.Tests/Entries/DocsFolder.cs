using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>The docs of the solution that the tests were built from.</summary>
internal static class DocsFolder
{
    public static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Closemown.slnx"))) folder = folder.Parent;
        Assert.True(folder is not null, "The tests run inside the solution's folder.");
        return Path.Combine(folder.FullName, "docs");
    }
}
