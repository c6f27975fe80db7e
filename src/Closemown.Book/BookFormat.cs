namespace Closemown.Book;

/// <summary>The tables of a book, by version of its format. A step, once published, is never edited: a change is a new step.</summary>
internal static class BookFormat
{
    /// <summary>"CLMN": marks a SQLite file as a book.</summary>
    public const int ApplicationId = 0x434C4D4E;

    /// <summary>The first version in which weather has a hash of its own.</summary>
    public const int WeatherHashed = 2;

    /// <summary>A function known only while a book is brought up to date: SHA-256 of a text's UTF-8, 64 hexadecimal digits.</summary>
    public const string HashFunction = "closemown_sha256";

    /// <summary>The version this program writes; it reads every older one.</summary>
    public static int Version => Steps.Length;

    /// <summary>The first SQLite in which the WAL-reset fault is cured.</summary>
    public static Version LeastSqlite { get; } = new(3, 51, 3);

    /// <summary>The tables, indexes and triggers that a book of a version must hold.</summary>
    public static IEnumerable<string> Guards(int version) => Steps.Take(version).SelectMany(s => s).Where(s => s.StartsWith("create ", StringComparison.Ordinal));

    /// <summary>What leads from the version before to each version.</summary>
    public static string[][] Steps { get; } =
    [
        [
            "create table entry (seq integer primary key, id text not null unique, json text not null, hash text not null) strict",
            "create trigger entry_no_update before update on entry begin select raise(abort, 'entries are never changed'); end",
            "create trigger entry_no_delete before delete on entry begin select raise(abort, 'entries are never deleted'); end",
            "create trigger entry_no_replace before insert on entry when exists(select 1 from entry where seq=new.seq or id=new.id) begin select raise(abort, 'entries are never replaced'); end",
            "create trigger entry_in_turn before insert on entry when new.seq < 1 or new.seq > (select coalesce(max(seq), 0) + 1 from entry) begin select raise(abort, 'entries are numbered in turn'); end",
            "create table weather (seq integer primary key, id text not null unique, area text not null, date text not null, source text not null, forecast integer not null check (forecast in (0, 1)), json text not null) strict",
            "create index weather_day on weather (area, date, source, forecast)",
            "create trigger weather_no_update before update on weather begin select raise(abort, 'weather is never changed'); end",
            "create trigger weather_no_delete before delete on weather when old.forecast = 0 begin select raise(abort, 'recorded weather is never deleted'); end",
            "create trigger weather_no_replace before insert on weather when exists(select 1 from weather where seq=new.seq or id=new.id) begin select raise(abort, 'weather is never replaced'); end",
        ],
        // Weather lies outside the chain: without a hash of its own a changed digit in it would go unseen.
        [
            "create table weather_hash (id text not null primary key, hash text not null) strict",
            $"insert into weather_hash (id, hash) select id, {HashFunction}(json) from weather order by seq",
            "create trigger weather_hash_no_update before update on weather_hash begin select raise(abort, 'weather is never changed'); end",
            "create trigger weather_hash_no_delete before delete on weather_hash when exists(select 1 from weather where id=old.id) begin select raise(abort, 'weather is never changed'); end",
            "create trigger weather_hash_no_replace before insert on weather_hash when exists(select 1 from weather_hash where id=new.id) begin select raise(abort, 'weather is never replaced'); end",
            // Refuses an earlier version of the program that had the book open before it was brought up to date.
            "create trigger weather_hash_first before insert on weather when not exists(select 1 from weather_hash where id=new.id) begin select raise(abort, 'weather needs its hash'); end",
            "create trigger weather_hash_goes after delete on weather begin delete from weather_hash where id=old.id; end",
        ],
    ];
}
