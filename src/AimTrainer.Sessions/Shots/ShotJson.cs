using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// Reads a shot that another program sends as one JSON object, over HTTP or as a line. The names are those of shot files
/// (<c>docs/shots.md</c>); crossings are a list, <c>"crossings": [{"feet": 15, "board": 12.5}]</c>.
/// </summary>
public static class ShotJson
{
    /// <summary>Most crossings one shot may have.</summary>
    public const int MostCrossings = 100;

    private const int LongestId = 200, LongestWords = 200, LongestNote = 2000;

    /// <summary>Reads a shot, or everything that is wrong with it.</summary>
    /// <param name="source">What the sender is called, for messages.</param>
    /// <param name="utf8">The whole object.</param>
    /// <param name="lane">The lane, for <c>arrowsBoard</c>.</param>
    /// <param name="from">What kind of source it is, unless the shot says so itself.</param>
    /// <param name="line">Its line, when it came as one; else 0.</param>
    public static FileRead<FeedItem.ShotRead> Read(string source, ReadOnlySpan<byte> utf8, LaneProfile lane, ShotSource from, int line = 0)
    {
        var file = JsonFile.Read(source, utf8);
        var shot = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Read(reader, lane, from, line) : null;
        return new FileRead<FeedItem.ShotRead>(file.HasProblems ? null : shot, file.Problems);
    }

    /// <summary>Reads a shot that is part of a larger message; what is wrong is reported there.</summary>
    /// <returns>The shot; null when anything in it is wrong.</returns>
    public static FeedItem.ShotRead? Read(ObjectReader json, LaneProfile lane, ShotSource from, int line = 0)
    {
        var reading = new ShotReading { Source = json.OptionalChoice("source", ShotSource.File, ShotSource.Simulated) ?? from };
        reading.Id = json.OptionalText("id", LongestId);
        reading.Time = Time(json);
        var bowler = json.OptionalText("bowler", LongestWords);
        var hand = json.OptionalChoice<Hand>("hand");
        foreach (var crossing in json.OptionalObjects("crossings", 0, MostCrossings, "crossings") ?? [])
        {
            var feet = crossing.Number("feet", 0, LaneProfile.HeadPin.Value);
            var board = crossing.Number("board", ShotReading.LowestBoard, ShotReading.HighestBoard);
            crossing.Done();
            if (feet is { } distance && board is { } boards)
            {
                reading.AddCrossing(distance, boards);
            }
        }

        if (Board(json, "arrowsBoard") is { } arrows)
        {
            reading.AddCrossing(lane.ArrowsDistance.Value, arrows);
        }

        reading.LaydownBoard = Board(json, "laydownBoard");
        reading.BreakpointBoard = Board(json, "breakpointBoard");
        reading.BreakpointFeet = json.OptionalNumber("breakpointFeet", 0, LaneProfile.HeadPin.Value);
        reading.EntryBoard = Board(json, "entryBoard");
        reading.EntryAngleDegrees = json.OptionalNumber("entryAngleDeg", -20, 20);
        reading.LaunchAngleDegrees = json.OptionalNumber("launchAngleDeg", -20, 20);
        reading.SpeedMilesPerHour = json.OptionalNumber("speedMph", 1, 40);
        reading.SpeedPlace = json.OptionalChoice<SpeedPlace>("speedAt") ?? SpeedPlace.Unknown;
        reading.RevsRpm = json.OptionalNumber("revsRpm", 0, 1000);
        reading.AxisRotationDegrees = json.OptionalNumber("axisRotationDeg", -180, 180);
        reading.AxisTiltDegrees = json.OptionalNumber("axisTiltDeg", -90, 90);
        reading.Pins = (int?)json.OptionalWhole("pins", 0, 10);
        reading.Ball = json.OptionalText("ball", LongestWords);
        reading.Note = json.OptionalText("note", LongestNote);
        json.Done();
        var shot = reading.Check(out var problems);
        foreach (var problem in problems)
        {
            json.Report(problem.Field, problem.Found, problem.Allowed);
        }

        return shot is null ? null : new FeedItem.ShotRead(shot, bowler, hand, line);
    }

    private static double? Board(ObjectReader json, string name) => json.OptionalNumber(name, ShotReading.LowestBoard, ShotReading.HighestBoard);

    private static DateTimeOffset? Time(ObjectReader json)
    {
        if (json.OptionalText("time", 40) is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) && text.Contains('-', StringComparison.Ordinal))
        {
            return time;
        }

        json.Report("time", $"\"{text}\"", "ISO 8601, as 2026-03-01T18:05:09+01:00");
        return null;
    }
}
