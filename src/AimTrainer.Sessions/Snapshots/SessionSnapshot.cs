using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>
/// A picture of a station at one moment, for displays, pages and sounds. Immutable; the newest replaces all before it. A display
/// for the bowler shows <see cref="Told"/>; the shots themselves are for the coach.
/// </summary>
public sealed record SessionSnapshot
{
    /// <summary>The station's number, from 1.</summary>
    public required int Station { get; init; }

    /// <summary>Counts the kept steps of the session; a higher one is newer.</summary>
    public required long Version { get; init; }

    /// <summary>What was fixed before the first shot; null when there is no session.</summary>
    public SessionSetup? Setup { get; init; }

    /// <summary>What the session is doing; null when there is none.</summary>
    public SessionPhase? Phase { get; init; }

    /// <summary>The drill; null when there is no session.</summary>
    public DrillScript? Drill { get; init; }

    /// <summary>The block that is thrown; null before the first and after the last.</summary>
    public DrillBlock? Block { get; init; }

    /// <summary>Its number in the drill, from 1; 0 when there is none.</summary>
    public int BlockNumber { get; init; }

    /// <summary>What the next shot is thrown at: draw exactly this.</summary>
    public Aim? Shown { get; init; }

    /// <summary>What comes after it, for blocks that show that and when it is known: see <see cref="SessionState.Next"/>. Else null.</summary>
    public Aim? Next { get; init; }

    /// <summary>The number of that shot, from 1.</summary>
    public int NextNumber { get; init; }

    /// <summary>Shots of this block that count.</summary>
    public int Throws { get; init; }

    /// <summary>For a walking line its place, from 1; else 0.</summary>
    public int Place { get; init; }

    /// <summary>In a comparison which ball is thrown next, and how many good throws are still wanted; else null.</summary>
    public BallTurn? Turn { get; init; }

    /// <summary>
    /// In a comparison the last shot of each ball at the line that was thrown at last, in the drill's order; a ball without one is left
    /// out. Empty for other drills.
    /// </summary>
    public ValueList<GradedShot> LastOfEach { get; init; } = [];

    /// <summary>The last ten shots of this block, newest first, void ones included.</summary>
    public ValueList<GradedShot> LastShots { get; init; } = [];

    /// <summary>What the bowler has been told of the last shot.</summary>
    public Told Told { get; init; } = Told.Nothing;

    /// <summary>The figures of this block so far.</summary>
    public BlockSummary? Summary { get; init; }

    /// <summary>The block that ended last; null before any has.</summary>
    public FinishedBlock? Finished { get; init; }

    /// <summary>Points of all shots of the session that count.</summary>
    public int Points { get; init; }

    /// <summary>
    /// What happened in the step that led to this picture, so that a listener need not guess it from two pictures; empty before the
    /// first step. A reader who skipped pictures has skipped their events too. For the bowler only what <see cref="Told"/> allows.
    /// </summary>
    public ValueList<SessionEvent> Happened { get; init; } = [];

    /// <summary>Whose turn it is, where several bowlers share the lane; null where one throws alone.</summary>
    public LaneTurns? Turns { get; init; }

    /// <summary>The bowler's name as screens may show it; null when nobody said, and then it is initials.</summary>
    public string? NameOnScreen { get; init; }

    /// <summary>The bowler's name as screens may show it: what was agreed, else initials; the simulated bowler's is no person's. Empty without a session.</summary>
    public string ScreenName => NameOnScreen ?? (Setup is { } setup ? setup.Simulated ? setup.Bowler : AimTrainer.Sessions.ScreenName.Initials(setup.Bowler) : "");

    /// <summary>A station without a session.</summary>
    public static SessionSnapshot Idle(int station) => new() { Station = station, Version = 0 };
}
