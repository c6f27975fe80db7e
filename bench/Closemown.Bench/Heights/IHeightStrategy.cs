namespace Closemown.Bench.Heights;

/// <summary>A way to set the height.</summary>
internal interface IHeightStrategy
{
    /// <summary>Sets both sides to a height as the gauge reads it, mm, and leaves the nuts tight.</summary>
    void Set(HeightWork bench, double wantedMm);

    /// <summary>Days have gone by with mowings.</summary>
    void Mown()
    {
    }
}
