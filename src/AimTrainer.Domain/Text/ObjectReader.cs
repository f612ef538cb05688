using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>
/// Takes the members of one JSON object by name. Whatever is missing, of the wrong sort or out of range is reported and read as
/// null, so that one look at a file finds everything that is wrong with it; <see cref="Done"/> reports the names nobody asked for.
/// </summary>
public sealed class ObjectReader
{
    private readonly JsonFile _file;
    private readonly Dictionary<string, JsonMember> _members = new(StringComparer.Ordinal);
    private readonly List<string> _known = [];

    private ObjectReader(JsonFile file, JsonNode node)
    {
        _file = file;
        Node = node;
        foreach (var member in node.Members)
        {
            _members.TryAdd(member.Name, member);
        }
    }

    /// <summary>The object.</summary>
    public JsonNode Node { get; }

    /// <summary>Where the object starts.</summary>
    public JsonPlace Place => Node.Place;

    /// <summary>A reader of a value that should be an object.</summary>
    /// <param name="file">The file, which takes the problems.</param>
    /// <param name="node">The value.</param>
    /// <returns>The reader, or null after reporting that the value is something else.</returns>
    public static ObjectReader? Of(JsonFile file, JsonNode node)
    {
        if (node.Kind == JsonKind.Object)
        {
            return new ObjectReader(file, node);
        }

        file.Report(node.Place, node.Describe(), "an object between { and }");
        return null;
    }

    /// <summary>Whether the object has a member of this name, whatever its value.</summary>
    public bool Has(string name) => _members.ContainsKey(name);

    /// <summary>The place of a member, or of the object when it has none of this name.</summary>
    public JsonPlace PlaceOf(string name) => _members.TryGetValue(name, out var member) ? member.Place : Place;

    /// <summary>Reports that something is wrong with a member.</summary>
    public void Report(string name, string found, string allowed) =>
        _file.Report(_members.TryGetValue(name, out var member) ? member.Value.Place : Place, found, allowed);

    /// <summary>Reports that something is wrong with the object.</summary>
    public void Report(string found, string allowed) => _file.Report(Place, found, allowed);

    /// <summary>Reports that something is wrong at a place inside the object.</summary>
    public void Report(JsonPlace at, string found, string allowed) => _file.Report(at, found, allowed);

    /// <summary>A text.</summary>
    /// <param name="name">The member.</param>
    /// <param name="longest">At most so many characters; at least one is needed that is not a blank.</param>
    public string? Text(string name, int longest) => Required(name, TextAllowed(longest)) is { } node ? TextOf(node, longest) : null;

    /// <summary>A text that may be missing.</summary>
    /// <inheritdoc cref="Text"/>
    public string? OptionalText(string name, int longest) => Optional(name) is { } node ? TextOf(node, longest) : null;

    /// <summary>Texts in a list, which may be missing.</summary>
    /// <param name="name">The member.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="longest">At most so many characters each.</param>
    public ValueList<string> OptionalTexts(string name, int most, int longest) =>
        OptionalList(name, 0, most, "texts") is { } items
            ? items.Select(item => TextOf(item, longest)).OfType<string>().ToValueList()
            : [];

    /// <summary>A number.</summary>
    /// <param name="name">The member.</param>
    /// <param name="low">Lowest.</param>
    /// <param name="high">Highest.</param>
    public double? Number(string name, double low, double high) =>
        Required(name, NumberAllowed(low, high)) is { } node ? NumberOf(node, low, high) : null;

    /// <summary>A number that may be missing.</summary>
    /// <inheritdoc cref="Number"/>
    public double? OptionalNumber(string name, double low, double high) =>
        Optional(name) is { } node ? NumberOf(node, low, high) : null;

    /// <summary>Numbers in a list.</summary>
    /// <param name="name">The member.</param>
    /// <param name="fewest">At least so many.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="low">Lowest of each.</param>
    /// <param name="high">Highest of each.</param>
    /// <returns>Each number with its place, those that are wrong left out; null when there is no such list.</returns>
    public IReadOnlyList<(JsonPlace Place, double Number)>? Numbers(string name, int fewest, int most, double low, double high) =>
        List(name, fewest, most, "numbers") is { } items
            ? [.. items.Select(item => (item.Place, Number: NumberOf(item, low, high))).Where(item => item.Number is not null)
                .Select(item => (item.Place, item.Number!.Value))]
            : null;

    /// <summary>Numbers in rows: a list of lists, all of one length.</summary>
    /// <param name="name">The member.</param>
    /// <param name="rows">So many lists.</param>
    /// <param name="columns">So many numbers in each.</param>
    /// <param name="low">Lowest of each.</param>
    /// <param name="high">Highest of each.</param>
    /// <returns>The numbers, row by row; null after reporting when any is missing, too many or wrong.</returns>
    public IReadOnlyList<double>? Rows(string name, int rows, int columns, double low, double high)
    {
        var before = _file.ProblemCount;
        var numbers = (List(name, rows, rows, "lists") ?? []).SelectMany(row => ListOf(row, columns, columns, "numbers") ?? [])
            .Select(item => NumberOf(item, low, high)).OfType<double>().ToList();
        return _file.ProblemCount == before ? numbers : null;
    }

    /// <summary>A whole number.</summary>
    /// <inheritdoc cref="Number"/>
    public long? Whole(string name, long low, long high) =>
        Required(name, WholeAllowed(low, high)) is { } node ? WholeOf(node, low, high) : null;

    /// <summary>A whole number that may be missing.</summary>
    /// <inheritdoc cref="Number"/>
    public long? OptionalWhole(string name, long low, long high) =>
        Optional(name) is { } node ? WholeOf(node, low, high) : null;

    /// <summary>True or false.</summary>
    public bool? Flag(string name) => Required(name, FlagAllowed) is { } node ? FlagOf(node) : null;

    /// <summary>True or false, which may be missing.</summary>
    public bool? OptionalFlag(string name) => Optional(name) is { } node ? FlagOf(node) : null;

    /// <summary>One of some words.</summary>
    /// <param name="name">The member.</param>
    /// <param name="words">The words.</param>
    public string? Word(string name, params string[] words) => Required(name, OneOf(words)) is { } node ? WordOf(node, words) : null;

    /// <summary>One of some words, which may be missing.</summary>
    /// <inheritdoc cref="Word"/>
    public string? OptionalWord(string name, params string[] words) => Optional(name) is { } node ? WordOf(node, words) : null;

    /// <summary>One of the names of an enum, written with a small first letter.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    /// <param name="name">The member.</param>
    /// <param name="except">Names that a file may not use.</param>
    public T? Choice<T>(string name, params T[] except)
        where T : struct, Enum => Required(name, OneOf(Names(except))) is { } node ? ChoiceOf(node, except) : null;

    /// <summary>One of the names of an enum, which may be missing.</summary>
    /// <inheritdoc cref="Choice{T}"/>
    public T? OptionalChoice<T>(string name, params T[] except)
        where T : struct, Enum => Optional(name) is { } node ? ChoiceOf(node, except) : null;

    /// <summary>An object.</summary>
    /// <param name="name">The member.</param>
    public ObjectReader? Object(string name) => Required(name, "an object between { and }") is { } node ? Of(_file, node) : null;

    /// <summary>An object that may be missing.</summary>
    /// <inheritdoc cref="Object"/>
    public ObjectReader? OptionalObject(string name) => Optional(name) is { } node ? Of(_file, node) : null;

    /// <summary>Objects in a list.</summary>
    /// <param name="name">The member.</param>
    /// <param name="fewest">At least so many.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="what">What they are, for messages.</param>
    /// <returns>A reader of each; values that are no objects are reported and left out. Null when there is no such list.</returns>
    public IReadOnlyList<ObjectReader>? Objects(string name, int fewest, int most, string what) =>
        List(name, fewest, most, what) is { } items ? [.. items.Select(item => Of(_file, item)).OfType<ObjectReader>()] : null;

    /// <summary>Objects in a list that may be missing.</summary>
    /// <inheritdoc cref="Objects"/>
    public IReadOnlyList<ObjectReader>? OptionalObjects(string name, int fewest, int most, string what) =>
        OptionalList(name, fewest, most, what) is { } items ? [.. items.Select(item => Of(_file, item)).OfType<ObjectReader>()] : null;

    /// <summary>Which one of some members the object has; reports none, and any beside the first.</summary>
    /// <param name="names">The members of which exactly one is needed.</param>
    public string? ExactlyOne(params string[] names)
    {
        _known.AddRange(names);
        var has = names.Where(Has).OrderBy(name => _members[name].Place.Offset).ToList();
        if (has.Count == 0)
        {
            Report($"none of {string.Join(", ", names)}", "exactly one of them");
        }

        foreach (var further in has.Skip(1))
        {
            _file.Report(_members[further].Place, $"\"{further}\" beside \"{has[0]}\"", $"exactly one of {string.Join(", ", names)}");
        }

        return has.FirstOrDefault();
    }

    /// <summary>Reports every member that nobody asked for, with the names that are known here, the most alike first.</summary>
    public void Done()
    {
        var known = _known.Distinct().ToList();
        foreach (var member in Node.Members)
        {
            if (!known.Contains(member.Name, StringComparer.Ordinal))
            {
                // Looking for likeness is slow work that is wasted on a problem nobody will be told.
                var nearest = _file.IsFull ? null : Likeness.Nearest(member.Name, known);
                var rest = known.Where(name => name != nearest);
                var allowed = nearest is null ? string.Join(", ", rest) : string.Join(", ", rest.Prepend($"{nearest} (the most alike)"));
                _file.Report(member.Place, $"unknown key {FoundText.Quoted(member.Name)}", allowed);
            }
        }
    }

    private const string FlagAllowed = "true or false";

    private JsonNode? Optional(string name)
    {
        _known.Add(name);
        return _members.TryGetValue(name, out var member) ? member.Value : null;
    }

    private JsonNode? Required(string name, string allowed)
    {
        var node = Optional(name);
        if (node is null)
        {
            Report($"no \"{name}\"", allowed);
        }

        return node;
    }

    private IReadOnlyList<JsonNode>? List(string name, int fewest, int most, string what) =>
        Required(name, ListAllowed(fewest, most, what)) is { } node ? ListOf(node, fewest, most, what) : null;

    private IReadOnlyList<JsonNode>? OptionalList(string name, int fewest, int most, string what) =>
        Optional(name) is { } node ? ListOf(node, fewest, most, what) : null;

    private IReadOnlyList<JsonNode>? ListOf(JsonNode node, int fewest, int most, string what)
    {
        if (node.Kind != JsonKind.List)
        {
            _file.Report(node.Place, node.Describe(), ListAllowed(fewest, most, what));
            return null;
        }

        if (node.Items.Count < fewest || node.Items.Count > most)
        {
            _file.Report(node.Place, Invariant($"a list of {node.Items.Count}"), ListAllowed(fewest, most, what));
        }

        return [.. node.Items.Take(most)];
    }

    private string? TextOf(JsonNode node, int longest)
    {
        if (node.Kind != JsonKind.Text || string.IsNullOrWhiteSpace(node.Text))
        {
            _file.Report(node.Place, node.Describe(), TextAllowed(longest));
            return null;
        }

        if (node.Text.Length > longest)
        {
            _file.Report(node.Place, Invariant($"a text of {node.Text.Length} characters"), TextAllowed(longest));
            return null;
        }

        if (node.Text.EnumerateRunes().Any(FoundText.IsUnprintable))
        {
            _file.Report(node.Place, node.Describe(), "a text in one line, without control characters");
            return null;
        }

        return node.Text.Trim();
    }

    private double? NumberOf(JsonNode node, double low, double high)
    {
        if (node.Kind == JsonKind.Number && node.Number >= low && node.Number <= high)
        {
            return node.Number;
        }

        _file.Report(node.Place, node.Describe(), NumberAllowed(low, high));
        return null;
    }

    private long? WholeOf(JsonNode node, long low, long high)
    {
        if (node.Kind == JsonKind.Number && node.Number >= low && node.Number <= high && Math.Floor(node.Number) == node.Number)
        {
            return (long)node.Number;
        }

        _file.Report(node.Place, node.Describe(), WholeAllowed(low, high));
        return null;
    }

    private bool? FlagOf(JsonNode node)
    {
        if (node.Kind == JsonKind.Flag)
        {
            return node.Text == "true";
        }

        _file.Report(node.Place, node.Describe(), FlagAllowed);
        return null;
    }

    private string? WordOf(JsonNode node, string[] words)
    {
        if (node.Kind == JsonKind.Text && words.Contains(node.Text, StringComparer.Ordinal))
        {
            return node.Text;
        }

        _file.Report(node.Place, node.Describe(), OneOf(words));
        return null;
    }

    private T? ChoiceOf<T>(JsonNode node, T[] except)
        where T : struct, Enum
    {
        var names = Names(except);
        return WordOf(node, names) is { } word ? Enum.Parse<T>(word, ignoreCase: true) : null;
    }

    private static string[] Names<T>(T[] except)
        where T : struct, Enum =>
        [.. Enum.GetValues<T>().Except(except).Select(value => value.ToString()).Select(name => char.ToLowerInvariant(name[0]) + name[1..])];

    private static string OneOf(string[] words) => string.Join(", ", words.Select(word => $"\"{word}\""));

    private static string TextAllowed(int longest) => Invariant($"a text of 1 to {longest} characters");

    private static string NumberAllowed(double low, double high) => Invariant($"a number, {low} to {high}");

    private static string WholeAllowed(long low, long high) => low == high ? Invariant($"{low}") : Invariant($"a whole number, {low} to {high}");

    private static string ListAllowed(int fewest, int most, string what) => Invariant($"a list of {fewest} to {most} {what}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
