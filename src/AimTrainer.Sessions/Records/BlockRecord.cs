using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A block as it was thrown.</summary>
/// <param name="Began">What it was.</param>
/// <param name="Shots">Its shots as corrected, void ones included.</param>
/// <param name="Ended">How it ended; null while it has not.</param>
/// <param name="Summary">Its figures over the shots that count.</param>
public sealed record BlockRecord(
    SessionEvent.BlockBegan Began, ValueList<RecordedShot> Shots, SessionEvent.BlockEnded? Ended, BlockSummary Summary);
