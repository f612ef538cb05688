using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

/// <summary>Keeps the order as a file would; what is not durable is lost at a kill, as often as a test wants.</summary>
internal sealed class MemoryLineups : ILineupKeeper
{
    private string? _kept;

    /// <summary>Whether what need not be on the disk is lost.</summary>
    public bool LosesWhatIsNotDurable { get; set; }

    public Exception? Failure { get; set; }

    public void Keep(Lineup lineup, bool durable)
    {
        if (Failure is { } failure)
        {
            throw failure;
        }

        if (durable || !LosesWhatIsNotDurable)
        {
            _kept = JsonSerializer.Serialize(lineup, DomainJson.Options);
        }
    }

    public Lineup? Find(int station) => _kept is null ? null : JsonSerializer.Deserialize<Lineup>(_kept, DomainJson.Options);

    public void Drop(int station) => _kept = null;
}
