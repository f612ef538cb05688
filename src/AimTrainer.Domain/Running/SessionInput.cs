using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>Something that reaches a session from outside: a shot, a coach's action, or the time. All come by the same door.</summary>
/// <param name="At">When it came in; the only time that the session knows.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(ShotThrown), "shotThrown")]
[JsonDerivedType(typeof(Begin), "begin")]
[JsonDerivedType(typeof(Pause), "pause")]
[JsonDerivedType(typeof(Resume), "resume")]
[JsonDerivedType(typeof(End), "end")]
[JsonDerivedType(typeof(Skip), "skip")]
[JsonDerivedType(typeof(Repeat), "repeat")]
[JsonDerivedType(typeof(VoidShot), "voidShot")]
[JsonDerivedType(typeof(CorrectShot), "correctShot")]
[JsonDerivedType(typeof(ChangeTarget), "changeTarget")]
[JsonDerivedType(typeof(TakeNote), "takeNote")]
[JsonDerivedType(typeof(ClockTick), "clockTick")]
public abstract record SessionInput(DateTimeOffset At)
{
    /// <summary>The sender's own name for a coach's action, so that the same action sent twice is one; null when it has none. A shot has its own (<see cref="Shot.Id"/>).</summary>
    public string? ActionId { get; init; }

    /// <summary>A shot was seen.</summary>
    public sealed record ShotThrown(DateTimeOffset At, Shot Shot) : SessionInput(At);

    /// <summary>The first target is to be shown.</summary>
    public sealed record Begin(DateTimeOffset At) : SessionInput(At);

    /// <summary>Shots are to be set aside until <see cref="Resume"/>.</summary>
    public sealed record Pause(DateTimeOffset At) : SessionInput(At);

    /// <summary>Shots count again.</summary>
    public sealed record Resume(DateTimeOffset At) : SessionInput(At);

    /// <summary>The session is to end now.</summary>
    /// <param name="At">When.</param>
    /// <param name="Why">The reason, for the record.</param>
    public sealed record End(DateTimeOffset At, string Why) : SessionInput(At);

    /// <summary>What is shown is to be passed over.</summary>
    public sealed record Skip(DateTimeOffset At, Scope Scope) : SessionInput(At);

    /// <summary>The last aim is to be thrown at once more, or the block from its beginning.</summary>
    public sealed record Repeat(DateTimeOffset At, Scope Scope) : SessionInput(At);

    /// <summary>A shot does not count, though it stays in the record.</summary>
    public sealed record VoidShot(DateTimeOffset At, int Number, string Reason) : SessionInput(At);

    /// <summary>A shot's values were wrong; both are kept.</summary>
    public sealed record CorrectShot(DateTimeOffset At, int Number, Shot Shot) : SessionInput(At);

    /// <summary>A target is to be shown elsewhere, or wider or narrower, from now on; what is null stays.</summary>
    public sealed record ChangeTarget(DateTimeOffset At, string Target, BoardOffset? Width, Board? Centre, Feet? Distance) : SessionInput(At);

    /// <summary>Words for the record.</summary>
    public sealed record TakeNote(DateTimeOffset At, string Text) : SessionInput(At);

    /// <summary>Time has passed: a block may be over.</summary>
    public sealed record ClockTick(DateTimeOffset At) : SessionInput(At);
}
