namespace Closemown.Estimation.Tests;

public sealed class PlaceholderTests;
