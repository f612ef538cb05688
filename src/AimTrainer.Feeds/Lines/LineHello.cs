using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>What a feed says of itself in its first line.</summary>
/// <param name="Token">Its token; null when it showed none.</param>
/// <param name="Station">The station it wants; null when it named none.</param>
internal sealed record LineHello(string? Token, int? Station)
{
    public const string Name = "hello";

    private const int LongestToken = 200, MostStations = 64;

    /// <summary>Reads <c>{"hello": {"station": 3, "token": "..."}}</c>; what is wrong is reported to the reader.</summary>
    /// <returns>The hello; null when anything in it is wrong.</returns>
    public static LineHello? Read(JsonFile file, ObjectReader json)
    {
        var hello = json.Object(Name);
        var token = hello?.OptionalText("token", LongestToken);
        var station = (int?)hello?.OptionalWhole("station", 1, MostStations);
        hello?.Done();
        json.Done();
        return file.HasProblems ? null : new LineHello(token, station);
    }
}
