namespace Closemown.Estimation;

/// <summary>How often what was said of the next reading came true: whether it lay within the middle 50, 75 and 90 in 100 of what was expected.</summary>
public sealed class HitCount
{
    private static readonly int[] InHundred = [50, 75, 90];
    private readonly int[] came = new int[3];
    private int said;

    /// <summary>Counts a reading.</summary>
    /// <param name="surprise">Its two-sided probability, before it was seen.</param>
    public void Add(double surprise)
    {
        said++;
        for (var i = 0; i < 3; i++)
        {
            if (surprise > 1 - (InHundred[i] / 100.0)) came[i]++;
        }
    }

    /// <summary>For 50, 75 and 90 in 100: how often it was said and how often it came true.</summary>
    public IEnumerable<(int InHundred, int Said, int CameTrue)> Rows => InHundred.Select((n, i) => (n, said, came[i]));
}
