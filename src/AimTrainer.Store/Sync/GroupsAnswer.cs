namespace AimTrainer.Store;

/// <summary>The chain has the groups.</summary>
/// <param name="Unknown">Members of whom it has no session yet, and of whom it keeps no more than that they are so many.</param>
public sealed record GroupsAnswer(int Unknown);
