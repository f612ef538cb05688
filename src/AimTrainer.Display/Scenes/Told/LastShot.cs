using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Display;

/// <summary>What a display may show of the shot that was thrown last: no more than the bowler was told.</summary>
/// <param name="Number">Its number.</param>
/// <param name="State">What is known of it here.</param>
/// <param name="Told">What was told; null unless <paramref name="State"/> is <see cref="LastShotState.Told"/>.</param>
/// <param name="Shot">The shot, for the places of its targets; null when it belongs to a block that is over.</param>
internal sealed record LastShot(int Number, LastShotState State, ToldShot? Told, GradedShot? Shot)
{
    /// <summary>The last shot of a snapshot; null before the first.</summary>
    public static LastShot? Of(SessionSnapshot snapshot)
    {
        var shot = snapshot.LastShots.Count > 0 ? snapshot.LastShots[0] : null;
        var told = snapshot.Told.Results.Count > 0 ? snapshot.Told.Results[^1] : null;
        if (shot is { VoidReason: not null })
        {
            return new LastShot(shot.Number, LastShotState.Void, null, shot);
        }

        if (told is not null && (shot is null || told.Number == shot.Number))
        {
            return new LastShot(told.Number, LastShotState.Told, told, shot);
        }

        return shot is null ? null : new LastShot(shot.Number, LastShotState.Withheld, null, shot);
    }

    /// <summary>Whether its every target is told with its miss, so that showing the ball's way gives nothing away.</summary>
    public bool TellsWay => Told is { } told && Shot is { } shot && told.Targets.Count == shot.Targets.Count && told.Targets.All(target => target.Miss is not null);

    /// <summary>The target that something was told of, as it was shown.</summary>
    public Target? TargetOf(ToldTarget told) => Shot?.Targets.FirstOrDefault(result => result.Name == told.Name)?.Target;

    /// <summary>Whether a told target was held: of a single one what is told of the shot, of several what its miss was graded.</summary>
    public bool? HeldOf(ToldTarget told) => Shot is not { Targets.Count: > 1 } shot
        ? Told!.Held
        : told.Miss is null ? null : shot.Targets.FirstOrDefault(result => result.Name == told.Name)?.Grade?.Holds;
}
