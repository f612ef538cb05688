using System.Collections.Concurrent;

namespace AimTrainer.Web;

/// <summary>Counts which displays have their stream open. Safe from many threads.</summary>
internal sealed class LookingDisplays
{
    private readonly ConcurrentDictionary<string, int> _byToken = new(StringComparer.Ordinal);

    /// <summary>How many streams are open.</summary>
    public int Count => _byToken.Values.Sum();

    public int Of(string tokenId) => _byToken.GetValueOrDefault(tokenId);

    public void Came(string tokenId) => _byToken.AddOrUpdate(tokenId, 1, (_, looking) => looking + 1);

    public void Left(string tokenId) => _byToken.AddOrUpdate(tokenId, 0, (_, looking) => looking - 1);
}
