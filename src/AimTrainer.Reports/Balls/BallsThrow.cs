using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>One throw of a comparison.</summary>
/// <param name="Number">Its number in the comparison, from 1.</param>
/// <param name="SessionId">Its session; null for a throw of a file.</param>
/// <param name="NumberInSession">Its number there, or the line of the file.</param>
/// <param name="At">When; null when that is not known.</param>
/// <param name="Ball">The ball; null when nobody said.</param>
/// <param name="Line">The line; null when nobody said.</param>
/// <param name="Counts">Whether it is in the comparison, of whatever measure.</param>
/// <param name="Places">Where it was seen, nearest first.</param>
/// <param name="Reasons">Why it is left out of all or of a measure.</param>
public sealed record BallsThrow(
    int Number, string? SessionId, int? NumberInSession, DateTimeOffset? At, string? Ball, string? Line, bool Counts, ValueList<BallsPlace> Places,
    ValueList<BallsReason> Reasons);
