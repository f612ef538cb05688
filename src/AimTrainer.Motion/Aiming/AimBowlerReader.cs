using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Reads a bowler's usual throw and scatter from JSON. The format is told in <c>docs/motion.md</c>.</summary>
public static class AimBowlerReader
{
    /// <summary>Reads a bowler, or everything that is wrong with the file.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<AimBowler> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var bowler = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Part(reader) : null;
        return new FileRead<AimBowler>(file.HasProblems ? null : bowler, file.Problems);
    }

    /// <summary>Reads a bowler that is part of a larger document.</summary>
    /// <param name="bowler">The object; its problems go to its file.</param>
    /// <returns>The bowler, or null after reporting what is wrong.</returns>
    public static AimBowler? Part(ObjectReader bowler)
    {
        bowler.OptionalText("name", 80);
        var hand = bowler.Choice<Hand>("hand");
        var speed = bowler.Number("speedMph", 4.5, 35.5);
        var revs = bowler.Number("revsRpm", 0, Release.MostRpm);
        var rotation = bowler.Number("axisRotationDeg", -90, 90);
        var tilt = bowler.OptionalNumber("axisTiltDeg", 0, Release.MostTiltDegrees) ?? 0;
        var feet = bowler.OptionalNumber("laydownFeet", 0, Release.FarthestLaydownFeet) ?? 0;
        var scatter = bowler.Object("spread") is { } spread ? Spread(spread) : null;
        var correlations = bowler.Has("correlations") ? bowler.Rows("correlations", Scatter.Parts, Scatter.Parts, -1, 1) : null;
        bowler.Done();
        if (scatter is null || hand is not { } side || speed is not { } mph || revs is not { } rpm || rotation is not { } degrees)
        {
            return null;
        }

        try
        {
            return new AimBowler(side, mph, rpm, degrees, Scatter.Of(scatter, correlations?.ToValueList())) { AxisTiltDegrees = tilt, LaydownFeet = feet };
        }
        catch (ArgumentException exception)
        {
            bowler.Report("correlations", exception.Message, "correlations that four numbers can have");
            return null;
        }
    }

    private static ValueList<double>? Spread(ObjectReader spread)
    {
        double?[] read =
        [
            spread.Number("laydownBoards", 0, 10), spread.Number("launchAngleDeg", 0, 5), spread.Number("speedMph", 0, 5), spread.Number("revsRpm", 0, 200),
        ];
        spread.Done();
        return read.All(one => one is not null) ? read.Select(one => one!.Value).ToValueList() : null;
    }
}
