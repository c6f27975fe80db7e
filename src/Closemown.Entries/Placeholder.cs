namespace Closemown.Entries; internal static class Placeholder;
