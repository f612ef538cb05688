using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>Decides whether a throw counts as the same throw.</summary>
internal static class ComparableRule
{
    public static Comparability Judge(ComparableLimits? limits, Shot shot, LaunchAngle? launchAngle, Aim aim, SessionSetup setup)
    {
        if (limits is null)
        {
            return Comparability.Yes;
        }

        var verdict = new Verdict();
        if (limits.SpeedWithin is { } speedWithin)
        {
            JudgeSpeed(verdict, limits.Given.Speed ?? setup.Baseline.Speed, shot.Speed, speedWithin);
        }

        if (limits.RevsWithin is { } revsWithin)
        {
            var expected = limits.Given.Revs ?? setup.Baseline.Revs;
            verdict.Add("revs", "rpm", shot.Revs?.Value, expected?.Value, revsWithin.Value);
        }

        if (limits.LaunchAngleWithin is { } angleWithin)
        {
            var expected = limits.Given.LaunchAngle ?? LineAngle(aim, setup.Lane) ?? setup.Baseline.LaunchAngle;
            verdict.Add("launch angle", "degrees", launchAngle?.Angle.Value, expected?.Value, angleWithin.Value);
        }

        if (limits.LaydownWithin is { } laydownWithin)
        {
            var expected = limits.Given.Laydown ?? LineLaydown(aim) ?? setup.Baseline.Laydown;
            verdict.Add("laydown", "boards", shot.Laydown?.Boards, expected?.Boards, laydownWithin.Boards);
        }

        return verdict.Result();
    }

    private static void JudgeSpeed(Verdict verdict, BallSpeed? expected, BallSpeed? measured, MilesPerHour within)
    {
        if (expected is { } usual && measured is { } seen && (usual.Place != seen.Place || usual.Place == SpeedPlace.Unknown))
        {
            // A ball slows on its way: from different places, or from one that nobody named, nothing follows.
            verdict.Open($"speed measured {Words(seen.Place)}, expected is one measured {Words(usual.Place)}");
            return;
        }

        verdict.Add("speed", "mph", measured?.Value.Value, expected?.Value.Value, within.Value);
    }

    private static string Words(SpeedPlace place) => place switch
    {
        SpeedPlace.Release => "at the release",
        SpeedPlace.Average => "over the whole lane",
        SpeedPlace.Pins => "at the pins",
        _ => "at a place nobody named",
    };

    private static Degrees? LineAngle(Aim aim, LaneProfile lane) => aim.IsLine ? LineArithmetic.LaunchAngle(Place(aim, 0), Place(aim, 1), lane) : null;

    /// <summary>Where the line starts; null for a single target, and for a line so steep that it starts nowhere near the lane.</summary>
    private static Board? LineLaydown(Aim aim)
    {
        if (!aim.IsLine)
        {
            return null;
        }

        var (near, far) = (Place(aim, 0), Place(aim, 1));
        var boardsBack = Math.Abs((far.Board - near.Board).Boards) * near.Distance.Value / (far.Distance.Value - near.Distance.Value);
        return boardsBack <= LaneProfile.BoardCount * 4 ? LineArithmetic.BoardAt(near, far, default) : null;
    }

    private static Crossing Place(Aim aim, int index) => new(aim.Targets[index].Target.Distance, aim.Targets[index].Target.Centre);

    private sealed class Verdict
    {
        private readonly List<string> _outside = [];
        private readonly List<string> _open = [];

        public void Open(string reason) => _open.Add(reason);

        public void Add(string what, string unit, double? measured, double? expected, double within)
        {
            if (measured is not { } value)
            {
                _open.Add($"{what} not measured");
            }
            else if (expected is not { } usual)
            {
                _open.Add($"no usual {what} to compare with");
            }
            else if (Math.Abs((decimal)value - (decimal)usual) > (decimal)within)
            {
                _outside.Add(string.Create(CultureInfo.InvariantCulture, $"{what} {value:0.###} {unit}, expected {usual:0.###} within {within:0.###}"));
            }
        }

        public Comparability Result()
        {
            if (_outside.Count == 0 && _open.Count == 0)
            {
                return Comparability.Yes;
            }

            return new Comparability(_outside.Count > 0 ? false : null, _outside.Concat(_open).ToValueList());
        }
    }
}
