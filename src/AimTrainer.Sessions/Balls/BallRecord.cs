using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A ball as the record knows it.</summary>
/// <param name="Details">What the bowler says of it.</param>
/// <param name="Shots">Shots with it that count.</param>
/// <param name="LastThrownAt">When the last of them was thrown; null when none was.</param>
/// <param name="Surfaces">The history of its surface, the newest first.</param>
public sealed record BallRecord(BallDetails Details, int Shots, DateTimeOffset? LastThrownAt, ValueList<BallSurface> Surfaces);
