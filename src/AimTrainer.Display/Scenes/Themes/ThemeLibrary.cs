using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The themes that come with the program.</summary>
public static class ThemeLibrary
{
    private static readonly string[] Ids = ["evening", "stark", "daylight", "ash"];

    /// <summary>All of them, the default first.</summary>
    public static ValueList<Theme> Own { get; } = Ids.Select(Read).ToValueList();

    /// <summary>The theme that is used when nobody names one.</summary>
    public static Theme Default => Own[0];

    /// <summary>A theme of the program's own; null when it has none of that name.</summary>
    public static Theme? Find(string id) => Own.FirstOrDefault(theme => theme.Id == id);

    private static Theme Read(string id)
    {
        var name = $"themes.{id}.json";
        using var stream = typeof(ThemeLibrary).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the program was built without {name}");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        var read = ThemeReader.Read(name, bytes.ToArray());
        return read.Value ?? throw new InvalidOperationException(string.Join('\n', read.Problems));
    }
}
