using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AimTrainer.Domain;

/// <summary>Builds the values of a JSON file with their places.</summary>
internal ref struct JsonTree
{
    private readonly ReadOnlySpan<byte> _text;
    private readonly JsonFile _file;
    private readonly Stack<(JsonNode Node, Dictionary<string, int>? Names)> _open = [];
    private TextCursor _cursor;
    private (string Name, int Offset, int Line, int Column)? _name;
    private JsonNode? _root;

    private JsonTree(ReadOnlySpan<byte> text, JsonFile file)
    {
        _text = text;
        _file = file;
        _cursor = new TextCursor(text);
    }

    /// <summary>The outermost value, or null after telling the file what keeps it from being JSON.</summary>
    /// <param name="text">UTF-8 without a byte order mark.</param>
    /// <param name="file">Takes the problems.</param>
    public static JsonNode? Build(ReadOnlySpan<byte> text, JsonFile file) => new JsonTree(text, file).Build();

    private JsonNode? Build()
    {
        // One level more than allowed: the check below tells it in words of our own.
        var reader = new Utf8JsonReader(_text, new JsonReaderOptions { MaxDepth = JsonFile.MostDepth + 1 });
        try
        {
            while (reader.Read())
            {
                var offset = (int)reader.TokenStartIndex;
                if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray && reader.CurrentDepth >= JsonFile.MostDepth)
                {
                    return Stop(
                        offset,
                        Invariant($"more than {JsonFile.MostDepth} objects and lists inside one another"),
                        Invariant($"at most {JsonFile.MostDepth}"));
                }

                Take(ref reader, offset);
            }
        }
        catch (JsonException wrong)
        {
            var offset = JsonSyntax.OffsetOf(_text, wrong);
            var isAfterTheEnd = _root is not null && _open.Count == 0;
            var (found, allowed) = isAfterTheEnd ? ("more after the end of the first value", "one value a file") : JsonSyntax.Describe(_text, offset);
            return Stop(offset, found, allowed);
        }
        catch (InvalidOperationException)
        {
            // The text is valid UTF-8, so this is an escape such as \ud800 that is half a character.
            return Stop((int)reader.TokenStartIndex, "half a character (a \\u escape without its other half)", "whole characters: write the character itself");
        }

        return _root;
    }

    private void Take(ref Utf8JsonReader reader, int offset)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                var name = reader.GetString()!;
                _cursor.MoveTo(offset);
                _name = (name, offset, _cursor.Line, _cursor.Column);
                break;
            case JsonTokenType.StartObject:
                _open.Push((Add(JsonKind.Object, "", offset), new Dictionary<string, int>(StringComparer.Ordinal)));
                break;
            case JsonTokenType.StartArray:
                _open.Push((Add(JsonKind.List, "", offset), null));
                break;
            case JsonTokenType.EndObject:
            case JsonTokenType.EndArray:
                _open.Pop();
                break;
            case JsonTokenType.String:
                Add(JsonKind.Text, reader.GetString()!, offset);
                break;
            case JsonTokenType.Number:
                Add(JsonKind.Number, Encoding.UTF8.GetString(reader.ValueSpan), offset);
                break;
            case JsonTokenType.True:
            case JsonTokenType.False:
                Add(JsonKind.Flag, reader.TokenType == JsonTokenType.True ? "true" : "false", offset);
                break;
            default:
                Add(JsonKind.Null, "null", offset);
                break;
        }
    }

    private JsonNode Add(JsonKind kind, string text, int offset)
    {
        _cursor.MoveTo(offset);
        if (!_open.TryPeek(out var parent))
        {
            return _root = new JsonNode(kind, text, null, null, 0, offset, _cursor.Line, _cursor.Column);
        }

        if (_name is not { } name)
        {
            var items = parent.Node.ItemList ??= [];
            var item = new JsonNode(kind, text, parent.Node, null, items.Count, offset, _cursor.Line, _cursor.Column);
            items.Add(item);
            return item;
        }

        _name = null;
        var node = new JsonNode(kind, text, parent.Node, name.Name, 0, offset, _cursor.Line, _cursor.Column);
        var member = new JsonMember(name.Name, name.Offset, name.Line, name.Column, node);
        (parent.Node.MemberList ??= []).Add(member);
        if (!parent.Names!.TryAdd(name.Name, name.Line))
        {
            _file.Report(member.Place, Invariant($"key {FoundText.Quoted(name.Name)} a second time (first in line {parent.Names[name.Name]})"), "each key once");
        }

        return node;
    }

    private JsonNode? Stop(int offset, string found, string allowed)
    {
        var path = _open.TryPeek(out var parent) ? parent.Node.Path : "$";
        if (_name is { } name)
        {
            path += FoundText.PathPart(name.Name);
        }

        _cursor.MoveTo(Math.Max(offset, _cursor.Offset));
        _file.Report(new JsonPlace(offset, _cursor.Line, _cursor.Column, path), found, allowed);
        return null;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
