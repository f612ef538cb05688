using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>A value in a JSON file, with its place.</summary>
public sealed class JsonNode
{
    private readonly JsonNode? _parent;
    private readonly string? _name;
    private readonly int _index;
    private readonly int _offset, _line, _column;

    internal JsonNode(JsonKind kind, string text, JsonNode? parent, string? name, int index, int offset, int line, int column)
    {
        Kind = kind;
        Text = text;
        _parent = parent;
        _name = name;
        _index = index;
        (_offset, _line, _column) = (offset, line, column);
    }

    /// <summary>What sort of value it is.</summary>
    public JsonKind Kind { get; }

    /// <summary>The characters of a text; any other simple value as it is written in the file; empty for an object or a list.</summary>
    public string Text { get; }

    /// <summary>The members of an object, in the file's order, a name that comes twice included twice; empty for anything else.</summary>
    public IReadOnlyList<JsonMember> Members => MemberList ?? (IReadOnlyList<JsonMember>)[];

    /// <summary>The values of a list; empty for anything else.</summary>
    public IReadOnlyList<JsonNode> Items => ItemList ?? (IReadOnlyList<JsonNode>)[];

    /// <summary>The value of a number, which may be infinite when it is larger than a double; not a number for anything else.</summary>
    public double Number => Kind == JsonKind.Number ? double.Parse(Text, NumberStyles.Float, CultureInfo.InvariantCulture) : double.NaN;

    /// <summary>Where it stands.</summary>
    public JsonPlace Place => new(_offset, _line, _column, Path);

    /// <summary>Its JSON path. Worked out when asked for: a file may hold very many values, and few of them are wrong.</summary>
    public string Path
    {
        get
        {
            var parts = new Stack<string>();
            for (var node = this; node._parent is not null; node = node._parent)
            {
                parts.Push(node._name is { } name ? FoundText.PathPart(name) : $"[{node._index.ToString(CultureInfo.InvariantCulture)}]");
            }

            return "$" + string.Concat(parts);
        }
    }

    internal List<JsonMember>? MemberList { get; set; }

    internal List<JsonNode>? ItemList { get; set; }

    /// <summary>What it is, short enough for a message.</summary>
    public string Describe() => Kind switch
    {
        JsonKind.Object => "an object",
        JsonKind.List => "a list",
        JsonKind.Text => FoundText.Quoted(Text),
        _ => FoundText.Short(Text),
    };
}
