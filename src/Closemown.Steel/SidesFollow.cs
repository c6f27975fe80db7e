using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>
/// Whether each end follows its adjuster: one that was turned in twice, four steps or more, and at which the strip reads as before, while the other end
/// changed, is not noise but a fault. Common practice, no source; four steps are an assumption (more than three quarters of a tenth of a millimetre).
/// </summary>
internal sealed class SidesFollow
{
    private const double Steps = 4;
    private const int Moves = 2;
    private static readonly string[] StripChecks = [PaperCutEntry.Name, PaperDragEntry.Name];
    private readonly Side[] sides = [new(), new()];

    /// <summary>The side that does not follow, 0 left or 1 right, and the steps it was turned; null where none is known not to.</summary>
    public (int Side, double Steps)? Lost
    {
        get
        {
            for (var s = 0; s < 2; s++)
            {
                if (sides[s] is { Same: true, Moves: >= Moves, Turned: >= Steps } side && sides[1 - s].Changes > side.OtherChanges) return (s, side.Turned);
            }
            return null;
        }
    }

    public void Add(Entry e)
    {
        if (e.Is(ClicksEntry.Kind))
        {
            for (var s = 0; s < 2; s++) Turn(s, e[s == 0 ? ClicksEntry.Left : ClicksEntry.Right] ?? 0);
        }
        else if (StripChecks.Contains(e.Kind.Name) && BladeReads.Of(e) is null)
        {
            for (var s = 0; s < 2; s++)
            {
                if (e[StationFields.Words[2 * s]] is { } word) Read(s, e.Kind.Name, word);
            }
        }
        else if (e.Kind.Name is MowEntry.Name or LapEntry.Name or SquareUpEntry.Name or RebuildEntry.Name or GrindEntry.Name or FitEntry.Name or StripEntry.Name or ServiceEntry.Name)
        {
            for (var s = 0; s < 2; s++) sides[s] = new();
        }
    }

    private void Turn(int s, double steps)
    {
        var side = sides[s];
        if (steps == 0) return;
        side.Same = false;
        if (steps < 0) (side.Turned, side.Moves, side.OtherChanges) = (0, 0, sides[1 - s].Changes);
        else if (side.Words.Count > 0) (side.Turned, side.Moves) = (side.Turned + steps, side.Moves + 1);
    }

    private void Read(int s, string kind, string word)
    {
        var side = sides[s];
        if (!side.Words.TryGetValue(kind, out var was))
        {
            side.Words[kind] = word;
            return;
        }
        side.Same = was == word && word is "folds" or "loose";
        if (was == word) return;
        side.Words[kind] = word;
        (side.Turned, side.Moves, side.Changes, side.OtherChanges) = (0, 0, side.Changes + 1, sides[1 - s].Changes);
    }

    private sealed class Side
    {
        /// <summary>What the strip last read there, by kind of check.</summary>
        public Dictionary<string, string> Words { get; } = [];

        /// <summary>Steps in since a reading changed there.</summary>
        public double Turned { get; set; }

        public int Moves { get; set; }

        /// <summary>How often a reading changed there.</summary>
        public int Changes { get; set; }

        /// <summary>How often one had changed at the other end when the count of steps began.</summary>
        public int OtherChanges { get; set; }

        /// <summary>Whether it reads as before after the last turn.</summary>
        public bool Same { get; set; }
    }
}
