namespace AimTrainer.Domain;

/// <summary>A name and its value in a JSON object.</summary>
public sealed class JsonMember
{
    private readonly int _offset, _line, _column;

    internal JsonMember(string name, int offset, int line, int column, JsonNode value)
    {
        Name = name;
        (_offset, _line, _column) = (offset, line, column);
        Value = value;
    }

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The value.</summary>
    public JsonNode Value { get; }

    /// <summary>Where the name stands; the path is the value's.</summary>
    public JsonPlace Place => new(_offset, _line, _column, Value.Path);
}
