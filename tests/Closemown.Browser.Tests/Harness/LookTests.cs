using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>The pages see the screen and the wishes that a look stands for.</summary>
public sealed class LookTests(Site site)
{
    [Theory]
    [InlineData("phone", true, true)]
    [InlineData("phone", false, false)]
    [InlineData("desktop", true, false)]
    [InlineData("desktop", false, true)]
    public async Task The_page_sees_size_theme_touch_and_motion(string name, bool dark, bool still)
    {
        var size = ViewSize.Named(name);
        await using var visit = await site.Visit(new(size, dark, StillMotion: still));
        await visit.OpenMade("");
        var seen = await visit.Page.EvaluateAsync<string>(
            "() => [innerWidth, innerHeight, devicePixelRatio, matchMedia('(prefers-color-scheme: dark)').matches, matchMedia('(prefers-reduced-motion: reduce)').matches, matchMedia('(pointer: coarse)').matches].join(' ')");
        Assert.Equal(FormattableString.Invariant($"{size.WidthPx} {size.HeightPx} {size.Dots} {dark} {still} {size.Touch}").Replace("True", "true", StringComparison.Ordinal).Replace("False", "false", StringComparison.Ordinal), seen);
    }

    [Theory]
    [InlineData(true, "with")]
    [InlineData(false, "without")]
    public async Task Script_runs_or_does_not(bool script, string says)
    {
        await using var visit = await site.Visit(new(ViewSize.Phone, Script: script));
        await visit.OpenMade("<p id='said'>without</p><script>document.getElementById('said').textContent = 'with'</script>");
        Assert.Equal(says, await visit.Page.Locator("#said").InnerTextAsync());
    }
}
