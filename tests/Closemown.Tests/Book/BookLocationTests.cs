using Closemown.Book;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class BookLocationTests
{
    private static readonly string Root = OperatingSystem.IsWindows() ? @"C:\" : "/";

    private static string Full(params string[] parts) => Path.Combine([Root, .. parts]);

    private static Func<string, string?> Of(params (string Name, string Value)[] variables) =>
        name => variables.FirstOrDefault(v => v.Name == name).Value;

    [Fact]
    public void The_option_goes_before_the_environment_before_the_settings_before_the_usual_folder()
    {
        var (option, variable, settings, usual) = (Full("o.closemown"), Full("e.closemown"), Full("s.closemown"), Full("data"));
        BookLocation Where(string? o, string? e, string? s) => BookLocation.Resolve(o, Of(("CLOSEMOWN_BOOK", e!)), s, usual);
        Assert.Equal((option, BookSource.Option), (Where(option, variable, settings).Path, Where(option, variable, settings).Source));
        Assert.Equal((variable, BookSource.Environment), (Where(null, variable, settings).Path, Where(null, variable, settings).Source));
        Assert.Equal((settings, BookSource.Settings), (Where(null, "", settings).Path, Where(null, "", settings).Source));
        Assert.Equal((Full("data", "book.closemown"), BookSource.Usual), (Where(" ", null, "").Path, Where(" ", null, "").Source));
    }

    [Fact]
    public void The_explanation_says_what_decided_and_what_was_passed_over()
    {
        var (option, variable, settings) = (Full("o"), Full("e"), Full("s"));
        Assert.Equal($"{option}, from --book, which goes before CLOSEMOWN_BOOK ({variable}) and the settings file ({settings}).",
            BookLocation.Resolve(option, Of(("CLOSEMOWN_BOOK", variable)), settings, Full("d")).Explanation);
        Assert.Equal($"{variable}, from CLOSEMOWN_BOOK.", BookLocation.Resolve(null, Of(("CLOSEMOWN_BOOK", variable)), null, Full("d")).Explanation);
        Assert.Equal($"{Full("d", "book.closemown")}, from the usual data folder.", BookLocation.Resolve(null, Of(), null, Full("d")).Explanation);
    }

    [Fact]
    public void Memory_is_a_place_and_a_relative_option_is_made_full()
    {
        Assert.Equal(":memory:", BookLocation.Resolve(":memory:", Of(), null, null).Path);
        Assert.Equal(Path.GetFullPath("my.closemown"), BookLocation.Resolve("my.closemown", Of(), null, null).Path);
    }

    [Fact]
    public void Where_nothing_says_where_the_remedy_does()
    {
        var nowhere = Assert.Throws<BookException>(() => BookLocation.Resolve(null, Of(), null, null));
        Assert.Equal(BookTrouble.BadPlace, nowhere.Trouble);
        Assert.Contains("--book PATH", nowhere.Remedy, StringComparison.Ordinal);
        Assert.Contains("full path", Assert.Throws<BookException>(() => BookLocation.Resolve(null, Of(), "my.closemown", null)).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_usual_folder_is_the_platforms()
    {
        var home = Full("home", "me");
        Assert.Equal(Path.Combine(home, ".local", "share", "closemown"), BookLocation.UsualFolder(Of(("HOME", home)), DataPlatform.Linux));
        Assert.Equal(Full("x", "closemown"), BookLocation.UsualFolder(Of(("HOME", home), ("XDG_DATA_HOME", Full("x"))), DataPlatform.Linux));
        Assert.Equal(Path.Combine(home, ".local", "share", "closemown"), BookLocation.UsualFolder(Of(("HOME", home), ("XDG_DATA_HOME", "x")), DataPlatform.Linux));
        Assert.Equal(Path.Combine(home, "Library", "Application Support", "closemown"), BookLocation.UsualFolder(Of(("HOME", home)), DataPlatform.MacOS));
        Assert.Equal(Full("l", "closemown"), BookLocation.UsualFolder(Of(("LOCALAPPDATA", Full("l"))), DataPlatform.Windows));
        Assert.Null(BookLocation.UsualFolder(Of(), DataPlatform.Linux));
        Assert.Null(BookLocation.UsualFolder(Of(), DataPlatform.MacOS));
        Assert.Null(BookLocation.UsualFolder(Of(("HOME", home)), DataPlatform.Windows));
    }
}
