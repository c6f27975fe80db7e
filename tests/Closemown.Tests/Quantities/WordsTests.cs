using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>The words that people read: common practice, no source.</summary>
public sealed class WordsTests
{
    [Fact]
    public void Each_English_has_its_own_words()
    {
        Assert.Equal("reel head", Words.For(WritingStyle.American, WordKey.Unit));
        Assert.Equal("bottom blade", Words.For(WritingStyle.British, WordKey.Bedknife));
        Assert.Equal("bluntness", Words.For(WritingStyle.CommaMetric, WordKey.Edge));
        Assert.Equal("dullness", Words.Also(WritingStyle.British, WordKey.Edge));
        Assert.Null(Words.Also(WritingStyle.British, WordKey.Clearance));
    }

    [Fact]
    public void Every_key_has_a_word() => Assert.All(Enum.GetValues<WordKey>(), key =>
    {
        Assert.NotEqual("", Words.For(WritingStyle.American, key));
        Assert.NotEqual("", Words.For(WritingStyle.British, key));
    });

    [Fact]
    public void One_word_stands_for_one_thing_in_each_English()
    {
        foreach (WritingStyle style in new[] { WritingStyle.American, WritingStyle.British })
            Assert.Distinct(Enum.GetValues<WordKey>().Select(key => Words.For(style, key)));
    }
}
