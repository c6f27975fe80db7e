using Closemown.Entries;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>Writes entries into a book's tables, inside a transaction that the caller began.</summary>
internal sealed class RowWriter : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly SqliteCommand add;
    private long seq;
    private string hash;

    /// <param name="connection">The book, in a transaction.</param>
    /// <param name="last">Its last entry's number.</param>
    /// <param name="hash">Its last entry's hash.</param>
    public RowWriter(SqliteConnection connection, long last, string hash)
    {
        (this.connection, seq, this.hash) = (connection, last, hash);
        add = connection.CreateCommand();
        add.CommandText = "insert into entry (seq, id, json, hash) values ($seq, $id, $json, $hash)";
    }

    /// <summary>The book's last entry now, and its hash.</summary>
    public (long Seq, string Hash) Last => (seq, hash);

    public AppendResult Append(Entry entry)
    {
        var result = Arrivals.Judge(entry, SqliteBook.Json(connection, entry.Id), SameDay);
        if (result != AppendResult.Added) return result;
        if (entry.Is(WeatherEntry.Kind)) AddWeather(entry);
        else AddToChain(entry);
        return result;
    }

    public void Dispose() => add.Dispose();

    private void AddToChain(Entry entry)
    {
        hash = HashChain.Next(hash, entry.Json);
        seq++;
        add.Parameters.Clear();
        add.Parameters.AddWithValue("$seq", seq);
        add.Parameters.AddWithValue("$id", entry.Id.ToString("D"));
        add.Parameters.AddWithValue("$json", entry.Json);
        add.Parameters.AddWithValue("$hash", hash);
        add.ExecuteNonQuery();
    }

    private void AddWeather(Entry entry)
    {
        var day = WeatherDay.Of(entry);
        using var insert = connection.CreateCommand();
        insert.CommandText = """
            insert into weather (seq, id, area, date, source, forecast, json)
            select coalesce(max(seq), 0) + 1, $id, $area, $date, $source, $forecast, $json from weather
            """;
        insert.Parameters.AddWithValue("$id", entry.Id.ToString("D"));
        insert.Parameters.AddWithValue("$area", day.Area);
        insert.Parameters.AddWithValue("$date", day.Date);
        insert.Parameters.AddWithValue("$source", day.Source);
        insert.Parameters.AddWithValue("$forecast", day.Forecast ? 1 : 0);
        insert.Parameters.AddWithValue("$json", entry.Json);
        var older = SameDay(day).FindAll(e => Arrivals.MayBeDropped(e) && EntryOrder.Instance.Compare(e, entry) < 0);
        using var sum = connection.CreateCommand();
        sum.CommandText = "insert into weather_hash (id, hash) values ($id, $hash)";
        sum.Parameters.AddWithValue("$id", entry.Id.ToString("D"));
        sum.Parameters.AddWithValue("$hash", HashChain.Of(entry.Json));
        sum.ExecuteNonQuery();
        insert.ExecuteNonQuery();
        foreach (var old in older)
        {
            using var drop = connection.CreateCommand();
            drop.CommandText = "delete from weather where id = $id";
            drop.Parameters.AddWithValue("$id", old.Id.ToString("D"));
            drop.ExecuteNonQuery();
        }
    }

    private List<Entry> SameDay(WeatherDay day)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select json from weather where area = $area and date = $date and source = $source and forecast = $forecast order by seq";
        command.Parameters.AddWithValue("$area", day.Area);
        command.Parameters.AddWithValue("$date", day.Date);
        command.Parameters.AddWithValue("$source", day.Source);
        command.Parameters.AddWithValue("$forecast", day.Forecast ? 1 : 0);
        using var reader = command.ExecuteReader();
        var same = new List<Entry>();
        while (reader.Read())
        {
            if (EntryReader.Read(reader.GetString(0), EntryContext.Stored, out var entry).Count == 0) same.Add(entry!);
        }
        return same;
    }
}
