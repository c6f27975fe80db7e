namespace Closemown.Cli;

/// <summary>What a colour means. It never stands alone: a word or a mark says the same.</summary>
internal enum Tone
{
    Plain,

    /// <summary>Metal.</summary>
    Steel,

    /// <summary>The plant.</summary>
    Turf,

    /// <summary>Paper, and doubt.</summary>
    Paper,

    /// <summary>Danger to hand or plant.</summary>
    Danger,

    /// <summary>What to do now, and headings.</summary>
    Strong,
}
