using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A target and where one shot crossed it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Centre">Its middle.</param>
/// <param name="Distance">Where along the lane.</param>
/// <param name="Kind">How the crossing is known.</param>
/// <param name="Board">The crossing; null when nobody measured it.</param>
/// <param name="Miss">Crossing less centre, positive inside; null when unknown.</param>
/// <param name="Held">Whether it was held; null when that is unknown, or when the target has no width.</param>
public sealed record ObservedTarget(string Name, Board Centre, Feet Distance, CrossingKind Kind, Board? Board, BoardOffset? Miss, bool? Held)
{
    /// <summary>A target as it was graded.</summary>
    public static ObservedTarget Of(TargetResult result) => new(
        result.Name, result.Target.Centre, result.Target.Distance, result.Crossing.Kind, result.Crossing.Board, result.Miss, result.Grade?.Holds);

    /// <summary>A shot at a place on the lane.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="shot">The shot.</param>
    /// <param name="centre">Its middle.</param>
    /// <param name="distance">Where along the lane.</param>
    /// <param name="width">Its whole width; null for a place without one, which can be missed but not held.</param>
    public static ObservedTarget At(string name, Shot shot, Board centre, Feet distance, BoardOffset? width)
    {
        var crossing = Crossings.At(shot, distance);
        var miss = crossing.Board - centre;
        return new ObservedTarget(
            name, centre, distance, crossing.Kind, crossing.Board, miss, width is { } known && miss is { } off ? off.Abs() <= known.Times(0.5m) : null);
    }
}
