using System.Text;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Docs;

/// <summary>docs/errors.md lists every fault that the sources make.</summary>
public sealed class ErrorsPageTests
{
    private const string Head = """
        # Errors

        Everything that the program refuses, and what it says to do. Made from the sources: run the tests with CLOSEMOWN_WRITE_DOCS=1; a test fails when this page is stale.

        In the pipe, on the server and with `--json` a fault is `{"ok":false,"error":{"code", "field", "message", "remedy"}}`; the commands print the message and the remedy on standard error.
        "…" is filled in: the value given, a field's name, a list of words. "a / b" is one or the other. A field of "…" is the field concerned.

        | code | when |
        |---|---|
        | `bad-json`, `unknown-kind`, `missing`, `bad-value`, `conflict`, `unknown-id`, `unknown-question` | the line or question cannot be taken as it is |
        | `implausible` | the value may be a slip: correct it, or stand by it with `confirmed` (`--confirm` in the commands) |
        | `book` | the book cannot be read or written |
        | `bug` | a fault of the program itself: the book is whole, and a line about it is in the log or on standard error |
        | `refused`, `usage` | a command was refused (exit code 1) or typed wrongly (exit code 2) |
        | others | the server: what was asked is too large, too often, from elsewhere, or not there |

        """;

    private static readonly IReadOnlyList<ErrorSite> Sites = [.. ErrorSites.In(Path.Combine(DocsFolder.Find(), "..", "src"))];

    [Fact]
    public void The_page_lists_every_message_that_the_sources_hold()
    {
        var path = Path.Combine(DocsFolder.Find(), "errors.md");
        var made = Page();
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(path, made);
        Assert.True(File.Exists(path) && File.ReadAllText(path) == made, "docs/errors.md is stale: run this test with CLOSEMOWN_WRITE_DOCS=1 to write it anew, and commit it.");
    }

    [Fact]
    public void Every_fault_says_what_to_do()
    {
        Assert.True(Sites.Count > 200, $"Only {Sites.Count} were found: the reading of the sources has missed a form.");
        Assert.DoesNotContain(Sites, s => s.Remedy.Length == 0);
        foreach (var code in typeof(FaultCodes).GetFields().Select(f => (string)f.GetRawConstantValue()!)) Assert.Contains(Sites, s => s.Code == code);
    }

    private static string Page()
    {
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        page.Append("| code | field | what is wrong | what to do | in |\n|---|---|---|---|---|\n");
        foreach (var s in Sites) page.Append($"| {s.Code} | {Cell(s.Field)} | {Cell(s.Message)} | {Cell(s.Remedy)} | {s.Project} |\n");
        return page.ToString();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace("\r", "", StringComparison.Ordinal).Replace("\n", "<br>", StringComparison.Ordinal).Replace("<br>  ", "<br>", StringComparison.Ordinal);
}
