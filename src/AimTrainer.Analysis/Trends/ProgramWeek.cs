namespace AimTrainer.Analysis;

/// <summary>One week of a program.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Starts">Its first day (UTC).</param>
/// <param name="Planned">Planned sessions.</param>
/// <param name="Done">Visits with at least one shot.</param>
/// <param name="Over">Whether it is over.</param>
public sealed record ProgramWeek(int Number, DateOnly Starts, int Planned, int Done, bool Over);
