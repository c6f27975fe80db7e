namespace Closemown.EndToEnd.Tests;

public sealed class PlaceholderTests;
