namespace AimTrainer.Domain;

/// <summary>What happens to a missed session.</summary>
/// <param name="WithinDays">It may be made up so many days after its week's end, 0 to 60; 0 when none may be made up.</param>
/// <param name="Most">At most so many of the program's sessions, 0 or more.</param>
public sealed record ProgramMakeUp(int WithinDays, int Most);
