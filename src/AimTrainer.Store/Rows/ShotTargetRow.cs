using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>How a graded shot crossed one of its targets, as it stands now.</summary>
public sealed class ShotTargetRow
{
    /// <summary>Which session.</summary>
    public required long SessionKey { get; init; }

    /// <summary>Which shot of it.</summary>
    public required int Number { get; init; }

    /// <summary>Which target of the shot's aim, from 0: nearest first.</summary>
    public required int Position { get; init; }

    /// <summary>The target's name.</summary>
    public required string Name { get; init; }

    /// <summary>Feet past the foul line.</summary>
    public required double DistanceFeet { get; init; }

    /// <summary>Its middle as it was shown, the bowler's board.</summary>
    public required double CentreBoard { get; init; }

    /// <summary>Its width as it was shown, in boards.</summary>
    public required double WidthBoards { get; init; }

    /// <summary>How well the crossing is known.</summary>
    public required CrossingKind Crossing { get; init; }

    /// <summary>Where the ball crossed; null when unknown.</summary>
    public double? CrossingBoard { get; init; }

    /// <summary>Crossing less centre, in boards, positive inside; null when unknown.</summary>
    public double? MissBoards { get; init; }

    /// <summary>The name of the award; null when unknown.</summary>
    public string? Grade { get; init; }

    /// <summary>Whether the target was held; null when unknown.</summary>
    public bool? Held { get; init; }

    /// <summary>The award's points; null when unknown.</summary>
    public int? Points { get; init; }

    /// <summary>The row of one target of a shot.</summary>
    /// <param name="sessionKey">Which session.</param>
    /// <param name="number">Which shot of it.</param>
    /// <param name="position">Which target of the shot, from 0.</param>
    /// <param name="result">How it was crossed.</param>
    public static ShotTargetRow Of(long sessionKey, int number, int position, TargetResult result) => new()
    {
        SessionKey = sessionKey,
        Number = number,
        Position = position,
        Name = result.Name,
        DistanceFeet = result.Target.Distance.Value,
        CentreBoard = result.Target.Centre.Boards,
        WidthBoards = result.Target.Width.Boards,
        Crossing = result.Crossing.Kind,
        CrossingBoard = result.Crossing.Board?.Boards,
        MissBoards = result.Miss?.Boards,
        Grade = result.Grade?.Name,
        Held = result.Grade?.Holds,
        Points = result.Grade?.Points,
    };
}
