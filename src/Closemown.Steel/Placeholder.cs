namespace Closemown.Steel; internal static class Placeholder;
