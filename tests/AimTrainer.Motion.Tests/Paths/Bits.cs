namespace AimTrainer.Motion.Tests;

/// <summary>Every bit of what a path comes to, so that 0 and -0 differ and not a number is like itself.</summary>
internal static class Bits
{
    public static long[] Of(in PathEnd end) =>
    [
        (long)end.Finish, .. ((double[])
        [
            end.ArrowsBoard, end.BreakpointBoard, end.BreakpointFeet, end.RollFeet, end.RollSeconds, end.BoardAt60, end.AngleAt60Degrees, end.EndFeet,
            end.EndSeconds, end.EndMetresPerSecond, end.EndSlipMetresPerSecond, end.ContactBoard, end.ContactAngleDegrees, end.ContactFeet,
        ]).Select(BitConverter.DoubleToInt64Bits),
    ];
}
