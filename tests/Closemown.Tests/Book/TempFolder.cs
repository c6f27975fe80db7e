using Closemown.Book;
using Microsoft.Data.Sqlite;

namespace Closemown.Tests.Book;

/// <summary>A folder of a test's own, gone after it.</summary>
internal sealed class TempFolder : IDisposable
{
    public TempFolder() => Path = Directory.CreateTempSubdirectory("closemown-").FullName;

    public string Path { get; }

    public string Book => At("book.closemown");

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public SqliteBook Open(BookOptions? options = null) => (SqliteBook)BookFile.Open(Book, options);

    /// <summary>A connection past the book's own code, as another program would make it.</summary>
    public SqliteConnection Raw(string? path = null)
    {
        var raw = new SqliteConnection($"Data Source={path ?? Book};Pooling=False");
        raw.Open();
        return raw;
    }

    public void Do(string sql)
    {
        using var raw = Raw();
        Do(raw, sql);
    }

    public static void Do(SqliteConnection raw, string sql)
    {
        using var command = raw.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
