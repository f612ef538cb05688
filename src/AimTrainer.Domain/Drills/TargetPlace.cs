namespace AimTrainer.Domain;

/// <summary>Where a target is, as a drill says it.</summary>
public abstract record TargetPlace
{
    /// <summary>At a board and a distance.</summary>
    public sealed record AtBoard(Board Board, Feet Distance) : TargetPlace;

    /// <summary>At a mark of the lane profile, counted from the ball-hand edge.</summary>
    /// <param name="Kind">Arrow, dot or downlane mark.</param>
    /// <param name="Number">1 is nearest to the ball-hand edge.</param>
    /// <param name="Plus">Boards further inside.</param>
    public sealed record AtMark(MarkerKind Kind, int Number, BoardOffset Plus) : TargetPlace;

    /// <summary>At the breakpoint that the bowler's record holds.</summary>
    /// <param name="Plus">Boards further inside.</param>
    /// <param name="Otherwise">Where to aim when no breakpoint is recorded; null refuses to start.</param>
    public sealed record AtBreakpoint(BoardOffset Plus, Crossing? Otherwise) : TargetPlace;

    /// <summary>At the exit board of an oil pattern: its length in feet less 31, at that distance (common practice).</summary>
    /// <param name="PatternLength">Length of the pattern; null takes the one given for the session.</param>
    /// <param name="Plus">Boards further inside.</param>
    public sealed record AtPatternExit(Feet? PatternLength, BoardOffset Plus) : TargetPlace;
}
