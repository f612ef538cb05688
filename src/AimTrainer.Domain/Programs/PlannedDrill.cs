namespace AimTrainer.Domain;

/// <summary>A drill of a planned session.</summary>
/// <param name="DrillId">Which drill.</param>
/// <param name="Focus">What the bowler is to attend to; null when the drill says enough.</param>
/// <param name="Goals">What the drill's test blocks are to show, a level each; only a drill with a test block has any.</param>
public sealed record PlannedDrill(string DrillId, string? Focus, ValueList<LevelGoal> Goals);
