using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Bench.Workshop.Strategies;

/// <summary>Places where the reel was just felt to touch heavily, cold; every mechanic backs off there at once.</summary>
internal sealed record HeavyTouch(bool Left, bool Centre, bool Right)
{
    /// <summary>What an entry tells of it; null where nothing is heavy.</summary>
    public static HeavyTouch? In(JsonObject? entry)
    {
        if ((string?)entry?["kind"] != "contact") return null;
        bool At(int s) => (string?)entry[Stations.All[s]] == "heavy";
        return At(0) || At(1) || At(2) ? new(At(0), At(1), At(2)) : null;
    }

    /// <summary>Whether a step is clicks out at that end; at both for the centre.</summary>
    public bool BackedOffBy(JsonNode step) => (string)step["do"]! == "clicks"
        && (!(Left || Centre) || ((int?)step["left"] ?? 0) < 0) && (!(Right || Centre) || ((int?)step["right"] ?? 0) < 0);
}
