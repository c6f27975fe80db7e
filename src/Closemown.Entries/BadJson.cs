using System.Text;
using System.Text.Json;

namespace Closemown.Entries;

/// <summary>Says why a line could not be parsed: a name given twice, nested too deep, or no JSON at all.</summary>
internal static class BadJson
{
    /// <summary>How deep objects and lists of a line may nest.</summary>
    public const int MaxDepth = 16;

    private const int Deepest = 1000;
    private const string OneObject = """Write one object a line, like {"kind":"clicks","left":1,"right":1}.""";

    /// <summary>The first thing that is wrong with a line which the parser has refused.</summary>
    public static EntryFault Of(string line)
    {
        var bytes = Encoding.UTF8.GetBytes(line);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = Deepest });
        var names = new Stack<HashSet<string>?>();
        try
        {
            while (reader.Read())
            {
                switch (reader.TokenType)
                {
                    case JsonTokenType.StartObject or JsonTokenType.StartArray:
                        names.Push(reader.TokenType == JsonTokenType.StartObject ? new(StringComparer.Ordinal) : null);
                        if (names.Count > MaxDepth) return TooDeep(Character(bytes, reader.TokenStartIndex));
                        break;
                    case JsonTokenType.EndObject or JsonTokenType.EndArray:
                        names.Pop();
                        break;
                    case JsonTokenType.PropertyName when reader.GetString() is { } name && !names.Peek()!.Add(name):
                        return Twice(name, Character(bytes, reader.TokenStartIndex));
                }
            }
        }
        catch (JsonException e)
        {
            return NotJson(Character(bytes, e.BytePositionInLine ?? 0));
        }
        catch (InvalidOperationException)       // half a surrogate pair in a name
        {
            return NotJson(Character(bytes, reader.TokenStartIndex));
        }
        return NotJson(line.Length + 1);
    }

    private static int Character(byte[] bytes, long index) => Encoding.UTF8.GetCharCount(bytes, 0, (int)Math.Min(index, bytes.Length)) + 1;

    private static EntryFault NotJson(int at) => new(FaultCodes.BadJson, "", $"The line is not JSON (at character {at}).", OneObject);

    private static EntryFault TooDeep(int at) =>
        new(FaultCodes.BadJson, "", $"The line nests objects and lists deeper than {MaxDepth} (at character {at}).", "Write what is inside as fields of its own, or as a text.");

    private static EntryFault Twice(string name, int at) =>
        new(FaultCodes.BadJson, Spelling.Clip(name), $"The name \"{Spelling.Clip(name)}\" is given twice (at character {at}).", "Give each name once.");
}
