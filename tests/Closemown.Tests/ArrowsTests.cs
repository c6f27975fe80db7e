using System.Reflection;
using Xunit;

namespace Closemown.Tests;

/// <summary>The direction of the arrows between projects: what each may know of.</summary>
public sealed class ArrowsTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Closemown.Quantities"] = [],
        ["Closemown.Estimation"] = [],
        ["Closemown.Entries"] = ["Closemown.Quantities"],
        ["Closemown.Typing"] = ["Closemown.Entries", "Closemown.Quantities"],
        ["Closemown.Steel"] = ["Closemown.Entries", "Closemown.Estimation", "Closemown.Quantities"],
        ["Closemown.Height"] = ["Closemown.Entries", "Closemown.Estimation", "Closemown.Quantities"],
        ["Closemown.Turf"] = ["Closemown.Entries", "Closemown.Estimation", "Closemown.Quantities"],
        ["Closemown.Weather"] = ["Closemown.Entries", "Closemown.Quantities"],
        ["Closemown.Advice"] = ["Closemown.Steel", "Closemown.Height", "Closemown.Turf", "Closemown.Entries", "Closemown.Estimation", "Closemown.Quantities"],
        ["Closemown.Book"] = ["Closemown.Entries", "Closemown.Quantities"],
        ["Closemown.Calendars"] = ["Closemown.Advice", "Closemown.Entries", "Closemown.Quantities", "Closemown.Turf"],
        ["Closemown.Pipe"] = ["Closemown.Advice", "Closemown.Height", "Closemown.Book", "Closemown.Entries", "Closemown.Steel", "Closemown.Quantities"],
        ["Closemown.Serving"] = [],
        ["Closemown.Pages"] = ["Closemown.Advice", "Closemown.Typing", "Closemown.Entries", "Closemown.Quantities"],
        ["Closemown.Web"] = ["Closemown.Pages", "Closemown.Calendars", "Closemown.Serving", "Closemown.Typing", "Closemown.Pipe", "Closemown.Advice", "Closemown.Steel", "Closemown.Book", "Closemown.Entries", "Closemown.Quantities"],
    };

    public static TheoryData<string> Projects => [.. Allowed.Keys];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_knows_only_what_lies_below_it(string project)
    {
        var known = Assembly.Load(project).GetReferencedAssemblies()
            .Select(a => a.Name!).Where(n => n.StartsWith("Closemown.", StringComparison.Ordinal));
        Assert.Empty(known.Except(Allowed[project]));
    }
}
