namespace Closemown.Pipe; internal static class Placeholder;
