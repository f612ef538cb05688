using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The light path between the targets of a line: dashes on the straight line from middle to middle, clear of both targets.</summary>
internal static class ProjectorPath
{
    private const double DashFeet = 1, PitchFeet = 2.5, ClearFeet = 0.6;
    private const double WidthInches = 0.7;

    public static void Add(LaneInk ink, Aim aim)
    {
        for (var i = 1; i < aim.Targets.Count; i++)
        {
            Between(ink, aim.Targets[i - 1].Target, aim.Targets[i].Target);
        }
    }

    private static void Between(LaneInk ink, Target near, Target far)
    {
        var (from, to) = (new Crossing(near.Distance, near.Centre), new Crossing(far.Distance, far.Centre));
        var end = TargetLength.SpanOf(far, ink.Lane, ink.View).Near.Value - ClearFeet;
        for (var feet = TargetLength.SpanOf(near, ink.Lane, ink.View).Far.Value + ClearFeet; feet + DashFeet <= end; feet += PitchFeet)
        {
            ink.Add(new Shape<LanePoint>.Stroke([Place(feet), Place(feet + DashFeet)], WidthInches, ink.Palette.Path));
        }

        LanePoint Place(double feet)
        {
            var distance = Feet.FromFeet(feet);
            return ink.At(LineArithmetic.BoardAt(from, to, distance), distance);
        }
    }
}
