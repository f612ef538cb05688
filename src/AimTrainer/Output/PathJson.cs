using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>A path as <c>docs/motion.md</c> describes it.</summary>
internal static class PathJson
{
    private const double EveryFeet = 1;

    public static object Of(BallPath path)
    {
        var end = path.End;
        return new
        {
            ArrowsBoard = PlainNumber.Of(end.ArrowsBoard),
            BreakpointBoard = PlainNumber.Of(end.BreakpointBoard),
            BreakpointFeet = PlainNumber.Of(end.BreakpointFeet),
            RollFeet = PlainNumber.Of(end.RollFeet),
            BoardAt60 = PlainNumber.Of(end.BoardAt60),
            AngleAt60Deg = PlainNumber.Of(end.AngleAt60Degrees),
            TimeS = PlainNumber.Of(end.EndSeconds),
            SpeedLossMph = PlainNumber.Of(path.SpeedLossMph),
            Contact = double.IsNaN(end.ContactBoard)
                ? null
                : new
                {
                    Board = PlainNumber.Of(end.ContactBoard),
                    AngleDeg = PlainNumber.Of(end.ContactAngleDegrees),
                    Feet = PlainNumber.Of(end.ContactFeet),
                },
            Path = path.Points(EveryFeet).Select(point => new
            {
                Feet = PlainNumber.Of(point.Feet),
                Board = PlainNumber.Of(point.Board),
                TimeS = PlainNumber.Of(point.Seconds),
            }),
            End = Json.Word(end.Finish),
            EndFeet = PlainNumber.Of(end.EndFeet),
            EndSpeedMph = PlainNumber.Of(end.EndMetresPerSecond / Release.MetresPerSecondPerMph),
            SkidLengthFeet = PlainNumber.Of(path.SkidLengthFeet),
            HookLengthFeet = PlainNumber.Of(path.HookLengthFeet),
            RollLengthFeet = PlainNumber.Of(path.RollLengthFeet),
            HookBoards = PlainNumber.Of(path.HookBoards),
            EnergyAtLaydownJ = PlainNumber.Of(path.EnergyAtLaydownJoules),
            EnergyAtEndJ = PlainNumber.Of(path.EnergyAtEndJoules),
        };
    }
}
