using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>An entry of the book, in the visitor's words.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Entry">The entry, in the shape of the contract.</param>
/// <param name="Said">"paper-cut: left cuts, centre cuts, right folds".</param>
/// <param name="When">"3 May 2026, 10:30", by the entry's own offset.</param>
public sealed record EntryTold(Guid Id, string Kind, JsonObject Entry, string Said, string When)
{
    /// <summary>"about 1 in 140" where the reading is not like this mower; else null.</summary>
    public string? OddOneIn { get; init; }

    /// <summary>The entry that it takes out, of a void; else null.</summary>
    public EntryTold? TakesOut { get; init; }
}
