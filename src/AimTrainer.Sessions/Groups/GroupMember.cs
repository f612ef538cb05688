using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A bowler of a group.</summary>
/// <param name="Bowler">The name in the records.</param>
/// <param name="Hand">The hand.</param>
/// <param name="Level">The level of the program.</param>
/// <param name="Station">The lane that the bowler throws on, from 1; null when none was given.</param>
public sealed record GroupMember(string Bowler, Hand Hand, string Level, int? Station)
{
    /// <summary>The balls that the bowler compares, as they were named when a comparison was started last; a role each.</summary>
    public ValueList<ChosenBall> Balls { get; init; } = [];
}
