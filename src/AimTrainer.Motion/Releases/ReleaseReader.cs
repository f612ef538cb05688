using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Reads a release from JSON. The format is told in <c>docs/motion.md</c>.</summary>
public static class ReleaseReader
{
    /// <summary>Reads a release, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<ReleaseFile> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var release = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Part(reader) : null;
        return new FileRead<ReleaseFile>(file.HasProblems || release is not { } found ? null : new ReleaseFile(found), file.Problems);
    }

    /// <summary>Reads a release that is part of a larger document.</summary>
    /// <param name="release">The object; its problems go to its file.</param>
    /// <returns>The release, or null after reporting what is wrong.</returns>
    public static Release? Part(ObjectReader release)
    {
        var hand = release.Choice<Hand>("hand");
        var board = release.Number("laydownBoard", Board.NearEdge.Boards, Board.FarEdge.Boards);
        var feet = release.OptionalNumber("laydownFeet", 0, Release.FarthestLaydownFeet) ?? 0;
        var launch = release.Number("launchAngleDeg", -Release.WidestLaunchDegrees, Release.WidestLaunchDegrees);
        var speed = release.ExactlyOne("speedMps", "speedMph") switch
        {
            "speedMps" => release.Number("speedMps", Release.SlowestMetresPerSecond, Release.FastestMetresPerSecond),
            "speedMph" => release.Number("speedMph", 4.5, 35.5) * Release.MetresPerSecondPerMph,
            _ => null,
        };
        var revs = release.Number("revsRpm", 0, Release.MostRpm);
        var rotation = release.Number("axisRotationDeg", -90, 90);
        var tilt = release.OptionalNumber("axisTiltDeg", 0, Release.MostTiltDegrees) ?? 0;
        release.Done();
        return hand is { } side && board is { } laydown && launch is { } angle && speed is { } fast && revs is { } turns && rotation is { } turned
            ? new Release(side, laydown, angle, fast, turns) { AxisRotationDegrees = turned, AxisTiltDegrees = tilt, LaydownFeet = feet }
            : null;
    }
}
