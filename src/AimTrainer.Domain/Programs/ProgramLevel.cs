namespace AimTrainer.Domain;

/// <summary>A level of a program.</summary>
/// <param name="Name">Its name, one of a kind within the program.</param>
/// <param name="About">By what a bowler is put there.</param>
public sealed record ProgramLevel(string Name, string About);
