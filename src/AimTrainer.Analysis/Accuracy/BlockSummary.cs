using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What the shots of a block came to.</summary>
/// <param name="PerTarget">One a target, in the order in which they were first thrown at.</param>
/// <param name="Points">Points of all graded targets together.</param>
/// <param name="Held">Throws of <paramref name="Known"/> that held every target of their aim.</param>
/// <param name="Known">Throws of which every crossing was measured. A rate of holds is their share, since the crossings of one throw hang together; a
/// throw of which only a miss was measured is left out, as one of which only a hold was measured must be.</param>
public sealed record BlockSummary(ValueList<TargetSummary> PerTarget, int Points, int Held, int Known);
