namespace Closemown.Estimation; internal static class Placeholder;
