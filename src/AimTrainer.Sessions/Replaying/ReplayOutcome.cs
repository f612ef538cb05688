namespace AimTrainer.Sessions;

/// <summary>How a replay went.</summary>
/// <param name="Complete">Whether the drill came to its end; else the shots ran out first.</param>
/// <param name="Shots">Shots that were graded.</param>
/// <param name="Repeated">Shots that came twice and were taken once.</param>
/// <param name="AfterTheEnd">Shots left over when the drill was over.</param>
public sealed record ReplayOutcome(bool Complete, int Shots, int Repeated, int AfterTheEnd);
