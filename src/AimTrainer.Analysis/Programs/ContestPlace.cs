namespace AimTrainer.Analysis;

/// <summary>A bowler's place in a contest.</summary>
/// <param name="Bowler">The name in the records.</param>
/// <param name="Rank">From 1, the same for equal results; null without one.</param>
/// <param name="Value">What is ranked: a share, 0 to 1, or the spread now / spread before; null when unknown.</param>
/// <param name="OwnBoards">The width or spread that was set before, boards; null when unknown.</param>
/// <param name="Low">Lower 95 % limit of the value.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Shots">Shots in the contest.</param>
/// <param name="Why">Why there is no rank; null when there is one.</param>
public sealed record ContestPlace(string Bowler, int? Rank, double? Value, double? OwnBoards, double? Low, double? High, int Shots, string? Why);
