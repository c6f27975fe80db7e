namespace Closemown.Advice; internal static class Placeholder;
