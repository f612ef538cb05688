using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>Something that happened in a session. The log holds these beside the input that led to them; nothing is ever taken out.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BlockBegan), "blockBegan")]
[JsonDerivedType(typeof(AimShown), "aimShown")]
[JsonDerivedType(typeof(ShotGraded), "shotGraded")]
[JsonDerivedType(typeof(ShotSetAside), "shotSetAside")]
[JsonDerivedType(typeof(ShotVoided), "shotVoided")]
[JsonDerivedType(typeof(ShotCorrected), "shotCorrected")]
[JsonDerivedType(typeof(TargetChanged), "targetChanged")]
[JsonDerivedType(typeof(AimSkipped), "aimSkipped")]
[JsonDerivedType(typeof(AimRepeated), "aimRepeated")]
[JsonDerivedType(typeof(BlockEnded), "blockEnded")]
[JsonDerivedType(typeof(SessionPaused), "sessionPaused")]
[JsonDerivedType(typeof(SessionResumed), "sessionResumed")]
[JsonDerivedType(typeof(SessionEnded), "sessionEnded")]
[JsonDerivedType(typeof(NoteTaken), "noteTaken")]
public abstract record SessionEvent
{
    /// <summary>A block began.</summary>
    /// <param name="Run">Counts blocks as they are thrown, from 0: a block thrown twice has two.</param>
    /// <param name="Block">Which block of the drill, from 0.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="BlockKind">Test or training.</param>
    /// <param name="Attempt">1, or more when the coach had it repeated.</param>
    public sealed record BlockBegan(int Run, int Block, string Name, BlockKind BlockKind, int Attempt) : SessionEvent;

    /// <summary>What the next shot is thrown at. This very value is drawn and graded.</summary>
    /// <param name="Number">The number of that shot, from 1.</param>
    /// <param name="Aim">Its targets.</param>
    /// <param name="Place">For a walking line its place, from 1; else 0.</param>
    public sealed record AimShown(int Number, Aim Aim, int Place) : SessionEvent
    {
        /// <summary>In a comparison which ball is thrown; else null.</summary>
        public BallTurn? Turn { get; init; }
    }

    /// <summary>A shot was graded.</summary>
    /// <param name="Shot">The shot and its grades.</param>
    /// <param name="NextWidths">The width each of its targets has from now on.</param>
    /// <param name="Told">What the bowler is told.</param>
    public sealed record ShotGraded(GradedShot Shot, ValueList<NextWidth> NextWidths, Told Told) : SessionEvent;

    /// <summary>A shot came in when none counted; kept, not graded.</summary>
    public sealed record ShotSetAside(Shot Shot, string Why) : SessionEvent;

    /// <summary>A shot was taken out of every count.</summary>
    public sealed record ShotVoided(int Number, string Reason) : SessionEvent;

    /// <summary>A shot's values were corrected and graded again against what had been shown.</summary>
    /// <param name="Before">As it was.</param>
    /// <param name="After">As it is now.</param>
    public sealed record ShotCorrected(GradedShot Before, GradedShot After) : SessionEvent;

    /// <summary>The coach changed a target.</summary>
    public sealed record TargetChanged(string Name, Target Before, Target After) : SessionEvent;

    /// <summary>The coach passed over an aim.</summary>
    public sealed record AimSkipped(string Aim) : SessionEvent;

    /// <summary>The coach had an aim shown once more.</summary>
    public sealed record AimRepeated(string Aim) : SessionEvent;

    /// <summary>A block is over.</summary>
    /// <param name="Run">As in <see cref="BlockBegan"/>.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Why">What ended it.</param>
    /// <param name="Thresholds">For staircases: the width at which hits and misses balance.</param>
    public sealed record BlockEnded(int Run, string Name, BlockEndReason Why, ValueList<TargetThreshold> Thresholds) : SessionEvent
    {
        /// <summary>What a summary still had to tell when the block ended without a shot (the time was up, it was skipped); null when nothing waited.</summary>
        public Told? Told { get; init; }
    }

    /// <summary>Shots are set aside from now on.</summary>
    public sealed record SessionPaused : SessionEvent;

    /// <summary>Shots count again.</summary>
    public sealed record SessionResumed : SessionEvent;

    /// <summary>The session is over.</summary>
    public sealed record SessionEnded(string Why) : SessionEvent;

    /// <summary>Words for the record.</summary>
    public sealed record NoteTaken(string Text) : SessionEvent;
}
