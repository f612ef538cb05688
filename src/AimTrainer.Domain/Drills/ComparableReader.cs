namespace AimTrainer.Domain;

/// <summary>Reads when a throw counts as the same throw.</summary>
internal static class ComparableReader
{
    private static readonly string[] Limits = ["speedWithinMph", "revsWithinRpm", "launchAngleWithinDegrees", "laydownWithinBoards"];

    /// <summary>The limits; what is wrong is reported.</summary>
    public static ComparableLimits Read(ObjectReader comparable)
    {
        var speed = comparable.OptionalNumber("speedWithinMph", 0.1, 20);
        var revs = comparable.OptionalNumber("revsWithinRpm", 1, 500);
        var angle = comparable.OptionalNumber("launchAngleWithinDegrees", 0.05, 10);
        var laydown = comparable.OptionalNumber("laydownWithinBoards", 0.1, 20);
        if (!Limits.Any(comparable.Has))
        {
            comparable.Report("no limit", $"at least one of {string.Join(", ", Limits)}");
        }

        var given = comparable.OptionalObject("expect") is { } expect ? Expected(expect, comparable) : new Baseline();
        var leftOut = comparable.OptionalFlag("leaveOutOfSizing") ?? false;
        comparable.Done();
        return new ComparableLimits
        {
            SpeedWithin = speed is { } mph ? MilesPerHour.FromMilesPerHour(mph) : null,
            RevsWithin = revs is { } rpm ? Rpm.FromRpm(rpm) : null,
            LaunchAngleWithin = angle is { } degrees ? Degrees.FromDegrees(degrees) : null,
            LaydownWithin = laydown is { } boards ? BoardOffset.FromBoards(boards) : null,
            Given = given,
            LeftOutOfSizing = leftOut,
        };
    }

    private static Baseline Expected(ObjectReader expect, ObjectReader comparable)
    {
        var speed = expect.OptionalNumber("speedMph", 1, 40);
        var place = expect.Has("speedMph")
            ? expect.Choice("speedAt", SpeedPlace.Unknown)
            : expect.OptionalChoice("speedAt", SpeedPlace.Unknown);
        var revs = expect.OptionalNumber("revsRpm", 0, 1000);
        var angle = expect.OptionalNumber("launchAngleDegrees", -20, 20);
        var laydown = expect.OptionalNumber("laydownBoard", Board.NearEdge.Boards, Board.FarEdge.Boards);
        RequireLimit(expect, comparable, "speedMph", "speedWithinMph");
        RequireLimit(expect, comparable, "revsRpm", "revsWithinRpm");
        RequireLimit(expect, comparable, "launchAngleDegrees", "launchAngleWithinDegrees");
        RequireLimit(expect, comparable, "laydownBoard", "laydownWithinBoards");
        if (expect.Has("speedAt") && !expect.Has("speedMph"))
        {
            expect.Report("speedAt", "\"speedAt\" without \"speedMph\"", "speedMph beside it");
        }

        expect.Done();
        return new Baseline
        {
            Speed = speed is { } mph && place is { } where ? new BallSpeed(MilesPerHour.FromMilesPerHour(mph), where) : null,
            Revs = revs is { } rpm ? Rpm.FromRpm(rpm) : null,
            LaunchAngle = angle is { } degrees ? Degrees.FromDegrees(degrees) : null,
            Laydown = laydown is { } board ? Board.FromBoards(board) : null,
        };
    }

    // A value that nothing is held against would be believed to matter.
    private static void RequireLimit(ObjectReader expect, ObjectReader comparable, string value, string limit)
    {
        if (expect.Has(value) && !comparable.Has(limit))
        {
            expect.Report(value, $"\"{value}\" without a limit", $"\"{limit}\" in \"comparable\"");
        }
    }
}
