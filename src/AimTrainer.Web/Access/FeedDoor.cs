using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Who may send lines: a feed with a token for its station, and while no passphrase is set every feed of this machine.</summary>
public sealed class FeedDoor : IFeedGate
{
    private const string Hello = "LINES hello";
    private const int LetIn = 200, NotLetIn = 401;

    private readonly Passphrase _passphrase;
    private readonly FeedTokens _tokens;
    private readonly IReadOnlyList<int> _stations;
    private readonly Audit? _audit;

    /// <summary>The door of a data folder.</summary>
    /// <param name="dataFolder">Where the passphrase and the tokens are.</param>
    /// <param name="stations">The stations that there are.</param>
    /// <param name="clock">The time.</param>
    public FeedDoor(string dataFolder, IReadOnlyList<int> stations, TimeProvider clock)
        : this(new Passphrase(dataFolder), new FeedTokens(dataFolder, clock), stations, null)
    {
    }

    internal FeedDoor(Passphrase passphrase, FeedTokens tokens, IReadOnlyList<int> stations, Audit? audit) =>
        (_passphrase, _tokens, _stations, _audit) = (passphrase, tokens, stations, audit);

    /// <inheritdoc/>
    public FeedEntry Enter(string? token, int? station, bool fromThisMachine, string from)
    {
        var known = token is null ? null : _tokens.Find(token);
        var entry = token is null ? WithoutToken(station, fromThisMachine) : WithToken(known, station);
        var who = known is null ? "nobody known" : $"feed {known.Name} ({known.Id})";
        if (entry.Station is null)
        {
            _audit?.WriteRefused(new AuditLine(Hello, NotLetIn, who, from, token is null ? "without a token" : known is null ? "a token that is not known" : entry.Why));
        }
        else if (known is not null)
        {
            _audit?.Write(new AuditLine(Hello, LetIn, who, from, $"sends for station {entry.Station}"));
        }

        return entry;
    }

    /// <inheritdoc/>
    public bool Holds(FeedEntry entry) => entry.TokenId is { } id ? _tokens.IsGood(id) : !_passphrase.IsSet;

    private static FeedEntry WithToken(FeedToken? known, int? station) => known is null
        ? FeedEntry.No("token: found one that is not known here, or was revoked; allowed: one that the coach made (Access page)")
        : station is { } wanted && wanted != known.Station ? FeedEntry.No($"station: found {wanted}; allowed: {known.Station}, the token's own")
        : new FeedEntry(known.Station, known.Id, null);

    private FeedEntry WithoutToken(int? station, bool fromThisMachine)
    {
        if (_passphrase.IsSet || !fromThisMachine)
        {
            return FeedEntry.No("token: found none; allowed: one that the coach made (Access page), in a first line {\"hello\": {\"station\": 1, \"token\": \"...\"}}");
        }

        var number = station ?? (_stations.Count == 1 ? _stations[0] : null as int?);
        if (number is { } one && _stations.Contains(one))
        {
            return new FeedEntry(one, null, null);
        }

        var found = number is { } other ? $"{other}" : "none";
        return FeedEntry.No($"station: found {found}; allowed: {string.Join(", ", _stations)}, in a first line {{\"hello\": {{\"station\": 1}}}}");
    }
}
