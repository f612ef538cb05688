using System.Globalization;
using System.Text.Json;

namespace AimTrainer.Feeds;

/// <summary>On which line of a JSON text each property stands, and which stand there twice.</summary>
internal sealed class JsonLines
{
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);

    private JsonLines()
    {
    }

    /// <summary>Properties that their object already had: path and line.</summary>
    public List<(string Path, int Line)> Twice { get; } = [];

    /// <summary>Looks through a text.</summary>
    /// <exception cref="JsonException">It is not JSON.</exception>
    public static JsonLines Of(ReadOnlySpan<byte> json)
    {
        var found = new JsonLines();
        var reader = new Utf8JsonReader(json);
        var open = new Stack<string>();
        var path = "$";
        var line = 1;
        long counted = 0;
        while (reader.Read())
        {
            line += json[(int)counted..(int)reader.TokenStartIndex].Count((byte)'\n');
            counted = reader.TokenStartIndex;
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
            {
                open.Push(path);
            }
            else if (reader.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
            {
                open.Pop();
            }
            else if (reader.TokenType == JsonTokenType.PropertyName)
            {
                path = PathOf(open.Peek(), reader.GetString()!);
                if (!found._lines.TryAdd(path, line))
                {
                    found.Twice.Add((path, line));
                }
            }
        }

        return found;
    }

    /// <summary>The path of a property of an object.</summary>
    public static string PathOf(string parent, string name) =>
        name.All(char.IsAsciiLetterOrDigit) && name.Length > 0 ? $"{parent}.{name}" : string.Create(CultureInfo.InvariantCulture, $"{parent}['{name}']");

    /// <summary>The line of a path, from 1; of what is not there, the line of what should hold it.</summary>
    public int LineOf(string path)
    {
        for (var part = path; part.Length > 1; part = part[..Math.Max(1, Math.Max(part.LastIndexOf('.'), part.LastIndexOf('[')))])
        {
            if (_lines.TryGetValue(part, out var line))
            {
                return line;
            }
        }

        return 1;
    }
}
