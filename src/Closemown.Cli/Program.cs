using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;

using var book = BookFile.Open(":memory:");
var ids = new SequentialIds();
PipeLoop.Run(PipeLoop.Lines(Console.OpenStandardInput()), Console.Out, new Conversation(book, AdviceSettings.Default, Phrasing.Plain, ids.Next));
return 0;
