using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A block that is over, as it was when it ended.</summary>
/// <param name="Number">Its number in the drill, from 1.</param>
/// <param name="Block">The block.</param>
/// <param name="Why">What ended it.</param>
/// <param name="Summary">The figures of its shots that count.</param>
public sealed record FinishedBlock(int Number, DrillBlock Block, BlockEndReason Why, BlockSummary Summary);
