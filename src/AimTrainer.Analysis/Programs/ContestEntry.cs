namespace AimTrainer.Analysis;

/// <summary>A bowler of a contest.</summary>
/// <param name="Bowler">The name in the records.</param>
/// <param name="MissesBefore">Misses of test shots before the contest, boards, newest first.</param>
/// <param name="MissesIn">Misses of test shots in the contest.</param>
public sealed record ContestEntry(string Bowler, IReadOnlyList<double> MissesBefore, IReadOnlyList<double> MissesIn);
