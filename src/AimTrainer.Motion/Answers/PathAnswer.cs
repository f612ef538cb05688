using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>A path for machines, as <c>docs/motion.md</c> describes it; null where something did not happen.</summary>
/// <param name="ArrowsBoard">Board at the arrows.</param>
/// <param name="BreakpointBoard">Board where the ball heads straight downlane.</param>
/// <param name="BreakpointFeet">Distance of that.</param>
/// <param name="RollFeet">Where it has stopped sliding.</param>
/// <param name="BoardAt60">Board at 60 ft.</param>
/// <param name="AngleAt60Deg">Heading there, positive inward.</param>
/// <param name="TimeS">From the laydown to the end of the path.</param>
/// <param name="SpeedLossMph">Speed at the laydown less speed at the end.</param>
/// <param name="Contact">The touch of the head pin; null when it passes by.</param>
/// <param name="Path">Points at every whole foot, and at laydown and end.</param>
/// <param name="End">Pins or gutter.</param>
/// <param name="EndFeet">Where.</param>
/// <param name="EndSpeedMph">Speed there.</param>
/// <param name="SkidLengthFeet">Laydown to breakpoint.</param>
/// <param name="HookLengthFeet">Breakpoint to roll.</param>
/// <param name="RollLengthFeet">Roll to end.</param>
/// <param name="HookBoards">From the straight line of the launch to the ball at 60 ft.</param>
/// <param name="EnergyAtLaydownJ">Of motion and turning together.</param>
/// <param name="EnergyAtEndJ">The same at the end.</param>
public sealed record PathAnswer(
    decimal? ArrowsBoard,
    decimal? BreakpointBoard,
    decimal? BreakpointFeet,
    decimal? RollFeet,
    decimal? BoardAt60,
    decimal? AngleAt60Deg,
    decimal? TimeS,
    decimal? SpeedLossMph,
    PathContactAnswer? Contact,
    ValueList<PathPointAnswer> Path,
    PathFinish End,
    decimal? EndFeet,
    decimal? EndSpeedMph,
    decimal? SkidLengthFeet,
    decimal? HookLengthFeet,
    decimal? RollLengthFeet,
    decimal? HookBoards,
    decimal? EnergyAtLaydownJ,
    decimal? EnergyAtEndJ)
{
    private const double EveryFeet = 1;

    /// <summary>The document of a path.</summary>
    public static PathAnswer Of(BallPath path)
    {
        var end = path.End;
        return new PathAnswer(
            PlainNumber.Of(end.ArrowsBoard),
            PlainNumber.Of(end.BreakpointBoard),
            PlainNumber.Of(end.BreakpointFeet),
            PlainNumber.Of(end.RollFeet),
            PlainNumber.Of(end.BoardAt60),
            PlainNumber.Of(end.AngleAt60Degrees),
            PlainNumber.Of(end.EndSeconds),
            PlainNumber.Of(path.SpeedLossMph),
            double.IsNaN(end.ContactBoard)
                ? null
                : new PathContactAnswer(PlainNumber.Of(end.ContactBoard), PlainNumber.Of(end.ContactAngleDegrees), PlainNumber.Of(end.ContactFeet)),
            path.Points(EveryFeet).Select(point => new PathPointAnswer(PlainNumber.Of(point.Feet), PlainNumber.Of(point.Board), PlainNumber.Of(point.Seconds))).ToValueList(),
            end.Finish,
            PlainNumber.Of(end.EndFeet),
            PlainNumber.Of(end.EndMetresPerSecond / Release.MetresPerSecondPerMph),
            PlainNumber.Of(path.SkidLengthFeet),
            PlainNumber.Of(path.HookLengthFeet),
            PlainNumber.Of(path.RollLengthFeet),
            PlainNumber.Of(path.HookBoards),
            PlainNumber.Of(path.EnergyAtLaydownJoules),
            PlainNumber.Of(path.EnergyAtEndJoules));
    }
}
