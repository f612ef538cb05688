namespace AimTrainer.Domain;

/// <summary>What the bowler may be told after a shot. A display for the bowler shows this and nothing else.</summary>
/// <param name="Results">The shots that are told now, oldest first; empty when everything is withheld.</param>
public sealed record Told(ValueList<ToldShot> Results)
{
    /// <summary>Nothing is told.</summary>
    public static Told Nothing { get; } = new([]);
}
