using Closemown.Tests.Book.Model;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>A book in a file against lists in memory. Ten thousand sequences are the bench's command "book-model".</summary>
public sealed class BookModelTests
{
    [Fact]
    public void Whatever_happens_to_a_book_it_is_what_a_list_of_its_entries_would_be()
    {
        try
        {
            BookModel.Check(sequences: 25);
        }
        finally
        {
            FileBook.RemoveLast();
        }
    }
}
