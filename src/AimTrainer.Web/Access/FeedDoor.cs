using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Who may send lines: a feed with a token for its station, and while no passphrase is set every feed of this machine.</summary>
public sealed class FeedDoor : IFeedGate
{
    private readonly Passphrase _passphrase;
    private readonly FeedTokens _tokens;
    private readonly IReadOnlyList<int> _stations;

    /// <summary>The door of a data folder.</summary>
    /// <param name="dataFolder">Where the passphrase and the tokens are.</param>
    /// <param name="stations">The stations that there are.</param>
    /// <param name="clock">The time.</param>
    public FeedDoor(string dataFolder, IReadOnlyList<int> stations, TimeProvider clock)
        : this(new Passphrase(dataFolder), new FeedTokens(dataFolder, clock), stations)
    {
    }

    internal FeedDoor(Passphrase passphrase, FeedTokens tokens, IReadOnlyList<int> stations) => (_passphrase, _tokens, _stations) = (passphrase, tokens, stations);

    /// <inheritdoc/>
    public FeedEntry Enter(string? token, int? station, bool fromThisMachine)
    {
        if (token is not null)
        {
            return _tokens.Find(token) is not { } known ? FeedEntry.No("token: found one that is not known here, or was revoked; allowed: one that the coach made (Access page)")
                : station is { } wanted && wanted != known.Station ? FeedEntry.No($"station: found {wanted}; allowed: {known.Station}, the token's own")
                : new FeedEntry(known.Station, known.Id, null);
        }

        if (_passphrase.IsSet || !fromThisMachine)
        {
            return FeedEntry.No("token: found none; allowed: one that the coach made (Access page), in a first line {\"hello\": {\"station\": 1, \"token\": \"...\"}}");
        }

        var number = station ?? (_stations.Count == 1 ? _stations[0] : null as int?);
        return number is { } one && _stations.Contains(one)
            ? new FeedEntry(one, null, null)
            : FeedEntry.No($"station: found {(number is { } other ? $"{other}" : "none")}; allowed: {string.Join(", ", _stations)}, in a first line {{\"hello\": {{\"station\": 1}}}}");
    }

    /// <inheritdoc/>
    public bool Holds(FeedEntry entry) => entry.TokenId is { } id ? _tokens.IsGood(id) : !_passphrase.IsSet;
}
