using System.Collections.Concurrent;
using Closemown.Book;

namespace Closemown.Web;

/// <summary>Answers that hold for one state of the book and one asking time.</summary>
internal sealed class Answers(BookStamp stamp, DateTimeOffset at)
{
    private const int Most = 500;
    private const int LongestQuestion = 500;
    private readonly ConcurrentDictionary<string, byte[]> known = new(StringComparer.Ordinal);

    public BookStamp Stamp { get; } = stamp;

    public DateTimeOffset At { get; } = at;

    public byte[]? Find(string question) => known.GetValueOrDefault(question);

    /// <summary>Keeps an answer; past some hundred different questions none, nor one to a question that is odd by its length.</summary>
    public void Keep(string question, byte[] answer)
    {
        if (question.Length <= LongestQuestion && known.Count < Most) known[question] = answer;
    }
}
