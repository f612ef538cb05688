using AimTrainer.Analysis;

namespace AimTrainer.Store.Postgres;

/// <summary>What a person threw at one center in one month; shots that count and are not simulated only.</summary>
/// <param name="Month">Its first day, UTC.</param>
/// <param name="Center">The center.</param>
/// <param name="Sessions">Sessions with such shots.</param>
/// <param name="Graded">Crossings that are known.</param>
/// <param name="HitRate">The part of them that held its target, with Wilson's limits.</param>
/// <param name="MissBoards">Mean size of the miss in boards, with its limits by Student's t. Widths and distances of the targets differ: it is a look, not a test.</param>
public sealed record AcrossLine(DateTimeOffset Month, string Center, int Sessions, long Graded, BoundedEstimate HitRate, BoundedEstimate MissBoards);
