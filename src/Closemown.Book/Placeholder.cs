namespace Closemown.Book; internal static class Placeholder;
