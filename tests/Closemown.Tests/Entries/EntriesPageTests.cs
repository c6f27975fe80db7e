using System.Globalization;
using System.Text;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>The page about the entries: its list of kinds is made from the tables that the reader works by.</summary>
public sealed class EntriesPageTests
{
    private const string Marker = "<!-- From here on made from the field tables: run the tests with CLOSEMOWN_WRITE_DOCS=1. -->\n";

    [Fact]
    public void The_list_of_kinds_is_up_to_date()
    {
        var path = Path.Combine(DocsFolder.Find(), "entries.md");
        var page = File.ReadAllText(path);
        var head = page[..(page.IndexOf(Marker, StringComparison.Ordinal) + Marker.Length)];
        Assert.EndsWith(Marker, head, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("CLOSEMOWN_WRITE_DOCS") == "1") File.WriteAllText(path, page = head + List());
        Assert.True(page == head + List(), "docs/entries.md is stale: run this test with CLOSEMOWN_WRITE_DOCS=1 to write its list anew, and commit it.");
    }

    [Fact]
    public void The_page_explains_every_part_of_the_envelope_every_fault_and_every_name_kept_for_later()
    {
        var page = File.ReadAllText(Path.Combine(DocsFolder.Find(), "entries.md"));
        string[] names = ["v", "id", "at", "kind", "unit", "area", "by", "note", "typed", "voids", "confirmed",
            FaultCodes.BadJson, FaultCodes.UnknownKind, FaultCodes.Missing, FaultCodes.BadValue, FaultCodes.Implausible, FaultCodes.Conflict, .. Kinds.Reserved];
        Assert.All(names, n => Assert.Contains($"`{n}`", page, StringComparison.Ordinal));
        Assert.Contains("entries.schema.json", page, StringComparison.Ordinal);
    }

    private static string List()
    {
        var page = new StringBuilder();
        foreach (var kind in Kinds.All)
        {
            var about = kind.Belongs switch { Belongs.Unit => "about a cutting unit", Belongs.Area => "about a turf area", Belongs.UnitAndArea => "about a cutting unit, and an area if named", _ => "about another entry" };
            var nature = kind.Nature switch { Nature.Description => "Description", Nature.Reading => "Reading", _ => "Action" };
            page.Append(CultureInfo.InvariantCulture, $"\n### `{kind.Name}`\n{nature}, {about}: {kind.Help}.\n");
            foreach (var group in kind.OneOf) page.Append(CultureInfo.InvariantCulture, $"At least one of {string.Join(", ", group.Select(g => $"`{g}`"))}.\n");
            if (kind.OtherFieldsAreNumbers) page.Append("Every other field is an element with its number; at least one.\n");
            if (kind.Fields.Count > 0) page.Append("\n| field | form | meaning |\n|---|---|---|\n");
            foreach (var f in kind.Fields) page.Append(CultureInfo.InvariantCulture, $"| {(f.Required ? $"**`{f.Name}`**" : $"`{f.Name}`")} | {Form(f)} | {f.Help}{(f.Kept ? " (kept; read by no model)" : "")} |\n");
            page.Append(CultureInfo.InvariantCulture, $"\n```json\n{kind.Example}\n```\n");
        }
        return page.ToString();
    }

    private static string Form(FieldSpec f) => f.Form switch
    {
        FieldForm.Number => "number" + Range(f),
        FieldForm.Whole => "whole number" + Range(f),
        FieldForm.HalfSteps => "whole or half steps" + Range(f),
        FieldForm.Flag => "true or false",
        FieldForm.Word => string.Join(" / ", f.Words.Select(w => $"`{w}`")),
        FieldForm.Text => "text",
        FieldForm.Words => "list of " + string.Join(" / ", f.Words.Select(w => $"`{w}`")),
        FieldForm.Texts => "list of texts",
        FieldForm.Numbers => $"list of {(f.Count > 0 ? $"{f.Count} " : "")}numbers" + Range(f),
        FieldForm.NumberOrNumbers => "number or list of numbers" + Range(f),
        FieldForm.Date => "date, yyyy-mm-dd",
        FieldForm.Dates => "list of dates",
        FieldForm.GoNoGo => "`{\"goUm\":…,\"noGoUm\":…}`, one or both" + Range(f),
        FieldForm.Priors => "`{name: [mean, sd]}`",
        _ => throw new InvalidOperationException($"No words for {f.Form}."),
    };

    private static string Range(FieldSpec f) => double.IsFinite(f.Low) ? string.Create(CultureInfo.InvariantCulture, $", {f.Low} to {f.High}") : "";
}
