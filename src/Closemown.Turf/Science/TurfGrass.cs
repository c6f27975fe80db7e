namespace Closemown.Turf;

/// <summary>The two kinds of turf grass by how they bind carbon, which sets the warmth they grow best in.</summary>
public enum TurfGrass
{
    /// <summary>Cool-season (C3): bents, fescues, meadow-grasses, ryegrass.</summary>
    Cool,

    /// <summary>Warm-season (C4): bermudagrass, zoysiagrass, seashore paspalum.</summary>
    Warm,
}
