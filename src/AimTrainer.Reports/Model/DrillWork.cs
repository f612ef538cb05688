namespace AimTrainer.Reports;

/// <summary>How much was done of one drill.</summary>
/// <param name="Id">The drill.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Sessions">In how many sessions.</param>
/// <param name="Shots">Shots that count.</param>
public sealed record DrillWork(string Id, string Name, int Sessions, int Shots);
