using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Reads what is sent of a ball, and of its surface; the shapes are in <c>docs/json.md</c>.</summary>
public static class BallJson
{
    private const int LongestName = 200, LongestWords = 200, LongestUnit = 20, LongestNote = 2000;

    /// <summary>Reads a ball, or everything that is wrong with it.</summary>
    /// <param name="source">What the sender is called, for messages.</param>
    /// <param name="utf8">The whole object.</param>
    public static FileRead<BallDetails> ReadBall(string source, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(source, utf8);
        var ball = file.Root is { } root && ObjectReader.Of(file, root) is { } json ? Ball(json) : null;
        return new FileRead<BallDetails>(file.HasProblems ? null : ball, file.Problems);
    }

    /// <summary>Reads an entry of a ball's surface history, or everything that is wrong with it.</summary>
    /// <param name="source">What the sender is called, for messages.</param>
    /// <param name="utf8">The whole object.</param>
    /// <param name="now">The time, for an entry that has none.</param>
    public static FileRead<ReceivedSurface> ReadSurface(string source, ReadOnlySpan<byte> utf8, DateTimeOffset now)
    {
        var file = JsonFile.Read(source, utf8);
        var surface = file.Root is { } root && ObjectReader.Of(file, root) is { } json ? Surface(json, now) : null;
        return new FileRead<ReceivedSurface>(file.HasProblems ? null : surface, file.Problems);
    }

    private static BallDetails? Ball(ObjectReader json)
    {
        var bowler = json.Text("bowler", LongestName);
        var name = json.Text("name", LongestName);
        var surface = json.OptionalText("surface", LongestWords);
        var weight = json.OptionalNumber("weightPounds", BallDetails.LightestPounds, BallDetails.HeaviestPounds);
        var gyration = json.OptionalNumber("radiusOfGyrationInches", BallDetails.LeastGyrationInches, BallDetails.MostGyrationInches);
        var differential = json.OptionalNumber("differentialInches", 0, BallDetails.MostDifferentialInches);
        var layout = json.OptionalText("layout", LongestNote);
        var games = json.OptionalWhole("gamesSinceSurfaceWork", 0, BallDetails.MostGames);
        json.Done();
        return bowler is null || name is null
            ? null
            : new BallDetails
            {
                Bowler = bowler,
                Name = name,
                Surface = surface,
                WeightPounds = weight,
                RadiusOfGyration = gyration is { } radius ? Inches.FromMeasurement(radius) : null,
                Differential = differential is { } difference ? Inches.FromMeasurement(difference) : null,
                Layout = layout,
                GamesSinceSurfaceWork = (int?)games,
            };
    }

    private static ReceivedSurface? Surface(ObjectReader json, DateTimeOffset now)
    {
        var (bowler, ball) = (json.Text("bowler", LongestName), json.Text("ball", LongestName));
        var kind = json.Choice<BallSurfaceKind>("kind");
        var at = json.OptionalText("at", 40) is not { } text ? now
            : DateTimeOffset.TryParseExact(
                text, ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd'T'HH:mm:ssK"],
                CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time)
            ? time
            : (DateTimeOffset?)null;
        if (at is null)
        {
            json.Report("at", FoundText.Quoted(json.OptionalText("at", 40)!), "a day such as 2026-03-07, or with a time 2026-03-07T19:30:00Z");
        }

        var finish = json.OptionalText("finish", LongestWords);
        var roughness = json.OptionalNumber("roughness", 0, 10_000);
        var unit = json.OptionalText("roughnessUnit", LongestUnit);
        var note = json.OptionalText("note", LongestNote);
        json.Done();
        if (kind == BallSurfaceKind.Scan && (!json.Has("roughness") || !json.Has("roughnessUnit")))
        {
            json.Report("a scan without a number and its unit", "roughness and roughnessUnit, as the meter shows them");
        }

        if (kind == BallSurfaceKind.Work && (json.Has("roughness") || json.Has("roughnessUnit")))
        {
            json.Report("a number of roughness with work on the surface", "a scan of its own for the number");
        }

        return kind is { } what && at is { } when && bowler is not null && ball is not null
            ? new ReceivedSurface(bowler, ball, new BallSurface(when, what, finish, roughness, unit, null, note))
            : null;
    }
}
