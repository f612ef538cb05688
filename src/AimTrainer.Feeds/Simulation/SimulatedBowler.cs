using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>
/// An invented bowler: a shot is a pure function of the settings, its number and what it is aimed at. Every shot is marked
/// <see cref="ShotSource.Simulated"/> and goes through <see cref="ShotReading"/> like any other.
/// </summary>
public static class SimulatedBowler
{
    /// <summary>Random numbers set aside for one shot.</summary>
    private const ulong NumbersAShot = 64;

    private enum Chance : ulong
    {
        Laydown = 0,
        Angle = 2,
        Speed = 4,
        Revs = 6,
        IsGross = 8,
        GrossSide = 9,
        SpeedMissing = 10,
        RevsMissing = 11,
        LaydownMissing = 12,
        LaydownNoise = 14,
        FirstPlace = 16,
    }

    /// <summary>How the ball leaves the hand.</summary>
    /// <param name="settings">The bowler.</param>
    /// <param name="number">Number of the shot, from 1: fatigue and learning count from there.</param>
    /// <param name="aim">What is aimed at.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="path">How the ball runs, which the bowler allows for; straight when null.</param>
    public static Release Release(SimulatedBowlerSettings settings, int number, Aim aim, LaneProfile lane, ISimulatedPath? path = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var (laydown, angle) = Meant(settings, aim, lane);
        if (path is not null)
        {
            var meant = MeantRelease.Through(
                new Release(laydown, angle, settings.SpeedMilesPerHour, settings.RevsRpm, settings.Hand), aim, lane, path);
            (laydown, angle) = (meant.LaydownBoard, meant.LaunchAngleDegrees);
        }

        var spread = SpreadFactor(settings, number);
        var first = Math.Max(1, aim.Targets[0].Target.Distance.Value);
        var gross = 0.0;
        if (Unit(settings, number, Chance.IsGross) < settings.GrossErrorRate)
        {
            gross = Unit(settings, number, Chance.GrossSide) < 0.5 ? -settings.GrossErrorBoards : settings.GrossErrorBoards;
        }

        // Bias in aiming and gross errors turn the direction, so that they are as large as stated at the first target.
        var turned = Math.Atan(Math.Tan(angle * Math.PI / 180) - ((settings.AimBiasBoards + gross) * lane.Width.Value / LaneProfile.BoardCount / (first * 12)));
        return new Release(
            laydown + settings.LaydownBiasBoards + (settings.LaydownSpreadBoards * spread * Normal(settings, number, Chance.Laydown)),
            (turned * 180 / Math.PI) + (settings.AngleSpreadDegrees * spread * Normal(settings, number, Chance.Angle)),
            Math.Clamp(settings.SpeedMilesPerHour + (settings.SpeedSpreadMilesPerHour * Normal(settings, number, Chance.Speed)), 1, 40),
            Math.Clamp(settings.RevsRpm + (settings.RevsSpreadRpm * Normal(settings, number, Chance.Revs)), 0, 1000),
            settings.Hand);
    }

    /// <summary>The shot as it is observed: laydown, a crossing at the arrows and at each target, speed at release, revs.</summary>
    /// <param name="settings">The bowler.</param>
    /// <param name="number">Number of the shot, from 1.</param>
    /// <param name="aim">What is aimed at.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="path">How the ball runs; straight when null.</param>
    public static Shot Throw(SimulatedBowlerSettings settings, int number, Aim aim, LaneProfile lane, ISimulatedPath? path = null)
    {
        var release = Release(settings, number, aim, lane, path);
        var reading = new ShotReading
        {
            Id = FormattableString.Invariant($"simulated-{settings.Seed}-{number}"),
            Source = ShotSource.Simulated,
            SpeedPlace = SpeedPlace.Release,
            SpeedMilesPerHour = Seen(settings, number, Chance.SpeedMissing) ? release.SpeedMilesPerHour : null,
            RevsRpm = Seen(settings, number, Chance.RevsMissing) ? release.RevsRpm : null,
        };
        if (Seen(settings, number, Chance.LaydownMissing))
        {
            reading.LaydownBoard = Observed(release.LaydownBoard + (settings.MeasurementNoiseBoards * Normal(settings, number, Chance.LaydownNoise)));
        }

        var gutter = Gutter(release.LaydownBoard);
        var chance = Chance.FirstPlace;
        foreach (var distance in Places(aim, lane))
        {
            // A ball that has fallen into the gutter stays there.
            var board = (path ?? new StraightPath()).BoardAt(release, distance, lane);
            gutter ??= Gutter(board);
            if (Seen(settings, number, chance + 2))
            {
                reading.AddCrossing(
                    distance.Value, gutter ?? Observed(board + (settings.MeasurementNoiseBoards * Normal(settings, number, chance))));
            }

            chance += 3;
        }

        return reading.Check(out var problems) ?? throw new ArgumentException($"these settings give impossible shots: {problems}", nameof(settings));
    }

    /// <summary>By how much the spreads of this shot differ from those of the first.</summary>
    public static double SpreadFactor(SimulatedBowlerSettings settings, int number) =>
        (1 + (settings.FatigueAShot * (number - 1))) * Math.Pow(1 - settings.LearningAShot, number - 1);

    private static (double Laydown, double Angle) Meant(SimulatedBowlerSettings settings, Aim aim, LaneProfile lane)
    {
        var first = aim.Targets[0].Target;
        if (!aim.IsLine)
        {
            return (first.Centre.Boards + StraightPath.BoardsOver(first.Distance.Value, settings.AngleDegrees, lane), settings.AngleDegrees);
        }

        var last = aim.Targets[^1].Target;
        var boardsAFoot = (first.Centre - last.Centre).Boards / (last.Distance.Value - first.Distance.Value);
        var angle = Math.Atan(boardsAFoot * lane.Width.Value / LaneProfile.BoardCount / 12) * 180 / Math.PI;
        return (first.Centre.Boards + (boardsAFoot * first.Distance.Value), angle);
    }

    private static IEnumerable<Feet> Places(Aim aim, LaneProfile lane) => aim.Targets.Select(target => target.Target.Distance)
        .Append(lane.ArrowsDistance).Distinct().Where(distance => distance > default(Feet)).Order();

    /// <summary>The middle of the gutter on that side, when a board lies off the lane.</summary>
    private static double? Gutter(double board) =>
        board < Board.NearEdge.Boards ? ShotReading.LowestBoard : board > Board.FarEdge.Boards ? ShotReading.HighestBoard : null;

    private static double Observed(double board) => Math.Clamp(board, ShotReading.LowestBoard, ShotReading.HighestBoard);

    private static bool Seen(SimulatedBowlerSettings settings, int number, Chance chance) => Unit(settings, number, chance) >= settings.MissingRate;

    private static double Unit(SimulatedBowlerSettings settings, int number, Chance chance) =>
        SeededRandom.Unit(settings.Seed, ((ulong)number * NumbersAShot) + (ulong)chance);

    /// <summary>A standard normal number, of two uniform ones.</summary>
    /// <remarks>Source: Box, Muller, "A note on the generation of random normal deviates", Annals of Mathematical Statistics 29, 1958.</remarks>
    private static double Normal(SimulatedBowlerSettings settings, int number, Chance chance) =>
        Math.Sqrt(-2 * Math.Log(1 - Unit(settings, number, chance))) * Math.Cos(2 * Math.PI * Unit(settings, number, chance + 1));
}
