using Closemown.Tests.Pipe;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>The record of how often what was said came true.</summary>
public sealed class SaidScoreTests
{
    [Fact]
    public void Each_reading_is_counted_once_by_how_sure_its_likeliest_outcome_was()
    {
        var track = SteelBook.Track(SteelBook.Known(60), SteelBook.All("contact", "none"), SteelBook.Ends("contact", "none", "heavy"));
        var rows = track.Score.Rows.ToList();
        Assert.Equal([50, 75, 90], rows.Select(r => r.InHundred));
        Assert.Equal((5, 4), (rows[2].Said, rows[2].CameTrue));
        Assert.InRange(rows[2].MeanSaid, 0.9, 1);
    }

    [Fact]
    public void The_question_is_answered_for_all_units_and_for_each()
    {
        var talk = Talk.After("""{"kind":"contact","left":"none","right":"none"}""");
        var score = talk.Say("""{"ask":"score"}""")["score"]!;
        Assert.Equal(2, score["said"]!.AsArray().Sum(r => (int)r!["readings"]!));
        Assert.Equal(2, Assert.Single(score["units"]!.AsArray())!["said"]!.AsArray().Sum(r => (int)r!["readings"]!));
    }
}
