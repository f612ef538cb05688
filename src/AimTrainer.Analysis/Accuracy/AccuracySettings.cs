using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What must be known beside the shots.</summary>
public sealed record AccuracySettings
{
    /// <summary>The lane: width of its boards, how far the ball is taken to run straight.</summary>
    public required LaneProfile Lane { get; init; }

    /// <summary>Standard deviation of the error with which every board is measured; null when nobody knows it. 0 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0, or not a number.</exception>
    public double? NoiseBoards
    {
        get;
        init => field = value is null or >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(NoiseBoards), value, "allowed: 0 or more");
    }

    /// <summary>Where the outside part of the lane ends and the track begins (common practice: the first arrow is outside, the second in the track).</summary>
    public Board TrackFrom { get; init; } = Board.FromBoards(7.5);

    /// <summary>Where the track ends and the inside part begins (common practice: from the third arrow on).</summary>
    public Board InsideFrom { get; init; } = Board.FromBoards(14.5);
}
