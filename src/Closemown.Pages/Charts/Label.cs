using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Closemown.Pages;

/// <summary>Text in a picture. Built by hand: in Razor's own markup a "text" element means something else.</summary>
public sealed class Label : ComponentBase
{
    /// <summary>Where, from the left.</summary>
    [Parameter, EditorRequired]
    public double X { get; set; }

    /// <summary>The line it stands on, from the top.</summary>
    [Parameter, EditorRequired]
    public double Y { get; set; }

    /// <summary>start, middle or end.</summary>
    [Parameter]
    public string? Anchor { get; set; }

    /// <summary>Its class.</summary>
    [Parameter]
    public string? Class { get; set; }

    /// <summary>What it says.</summary>
    [Parameter, EditorRequired]
    public string Text { get; set; } = "";

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", X.ToString("0.#", CultureInfo.InvariantCulture));
        builder.AddAttribute(2, "y", Y.ToString("0.#", CultureInfo.InvariantCulture));
        builder.AddAttribute(3, "text-anchor", Anchor);
        builder.AddAttribute(4, "class", Class);
        builder.AddContent(5, Text);
        builder.CloseElement();
    }
}
