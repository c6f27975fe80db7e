namespace Closemown.Quantities; internal static class Placeholder;
