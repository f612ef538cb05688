namespace AimTrainer.Domain;

/// <summary>Sees to it that names are one of a kind, whatever the case of their letters.</summary>
/// <param name="what">What is named.</param>
/// <param name="within">Within what the names must differ.</param>
internal sealed class NameSet(string what, string within)
{
    private readonly HashSet<string> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Takes the member <c>name</c> of an object, and reports it when it was taken before.</summary>
    public void Take(ObjectReader reader)
    {
        var name = reader.Node.Members.FirstOrDefault(member => member.Name == "name")?.Value;
        if (name is { Kind: JsonKind.Text } && !_taken.Add(name.Text.Trim()))
        {
            reader.Report("name", $"a second {what} named {FoundText.Quoted(name.Text)}", $"a name that nothing else in the {within} has");
        }
    }
}
