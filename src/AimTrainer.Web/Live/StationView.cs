using System.Text.Json.Serialization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A station as the coach's pages see it: everything. Written as JSON on the live stream and by <c>GET /api/stations/N</c>.</summary>
public sealed record StationView
{
    /// <summary>The station, from 1.</summary>
    public required int Station { get; init; }

    /// <summary>The session; null when there is none.</summary>
    public string? SessionId { get; init; }

    /// <summary>The last kept step of that session; 0 before the first.</summary>
    public long Version { get; init; }

    /// <summary>What it is doing; null without a session.</summary>
    public SessionPhase? Phase { get; init; }

    /// <summary>Who throws.</summary>
    public string? Bowler { get; init; }

    /// <summary>With which hand.</summary>
    public Hand? Hand { get; init; }

    /// <summary>With which ball.</summary>
    public string? Ball { get; init; }

    /// <summary>Whether the bowler is simulated.</summary>
    public bool Simulated { get; init; }

    /// <summary>Length of the oil pattern, feet.</summary>
    [JsonPropertyName("patternFeet")]
    public Feet? PatternLength { get; init; }

    /// <summary>Anything about the lane.</summary>
    public string? LaneNote { get; init; }

    /// <summary>The drill; null without a session.</summary>
    public DrillSummary? Drill { get; init; }

    /// <summary>The block; null before the first and after the last.</summary>
    public BlockView? Block { get; init; }

    /// <summary>What the next shot is thrown at; this very value is graded.</summary>
    public Aim? Aim { get; init; }

    /// <summary>A name for that aim as it is drawn; a page that logs a shot sends it along (<c>docs/api.md</c>). Null without an aim.</summary>
    public string? AimKey { get; init; }

    /// <summary>The number of the next shot, from 1.</summary>
    public int NextNumber { get; init; }

    /// <summary>For a walking line its place, from 1; else 0.</summary>
    public int Place { get; init; }

    /// <summary>In a comparison which ball is thrown next, and how many good throws are still wanted. On a bowler's view the counts only where every shot is told.</summary>
    public BallTurn? Turn { get; init; }

    /// <summary>In a comparison the last shot of each ball at this line. Empty on a bowler's view.</summary>
    public ValueList<GradedShot> LastOfEach { get; init; } = [];

    /// <summary>The last ten shots of the block, newest first, void ones included. Empty on a bowler's view.</summary>
    public ValueList<GradedShot> LastShots { get; init; } = [];

    /// <summary>What the bowler has been told.</summary>
    public required Told Told { get; init; }

    /// <summary>The figures of the block. Null on a bowler's view.</summary>
    public BlockSummary? Summary { get; init; }

    /// <summary>Points of the session. Null on a bowler's view.</summary>
    public int? Points { get; init; }

    /// <summary>How its line feed stands. Null on a bowler's view, and where no lines are taken.</summary>
    public FeedStatus? Feed { get; init; }

    /// <summary>Whose turn it is, where several bowlers share the lane. On a bowler's view without names of the record.</summary>
    public LaneTurns? Turns { get; init; }

    /// <summary>The coach's view of a picture.</summary>
    public static StationView ForCoach(SessionSnapshot snapshot) => Of(snapshot) with
    {
        LastShots = snapshot.LastShots,
        LastOfEach = snapshot.LastOfEach,
        Turn = snapshot.Turn,
        Summary = snapshot.Summary,
        Points = snapshot.Points,
        Turns = snapshot.Turns,
    };

    /// <summary>The bowler's view: what the drill's feedback allows, and no figure from which the rest could be worked out.</summary>
    public static StationView ForBowler(SessionSnapshot snapshot) => Of(snapshot) with
    {
        Bowler = snapshot.Setup is null ? null : snapshot.ScreenName,
        LaneNote = null,
        Turns = snapshot.Turns?.ForScreens(),
    };

    private static StationView Of(SessionSnapshot snapshot) => new()
    {
        Station = snapshot.Station,
        SessionId = snapshot.Setup?.SessionId,
        Version = snapshot.Version,
        Phase = snapshot.Phase,
        Bowler = snapshot.Setup?.Bowler,
        Hand = snapshot.Setup?.Hand,
        Ball = snapshot.Setup?.Ball,
        Simulated = snapshot.Setup?.Simulated ?? false,
        PatternLength = snapshot.Setup?.PatternLength,
        LaneNote = snapshot.Setup?.LaneNote,
        Drill = snapshot.Drill is { } drill ? DrillSummary.Of(drill) : null,
        Block = snapshot.Block is { } block ? BlockView.From(block, snapshot) : null,
        Aim = snapshot.Shown,
        AimKey = snapshot.Shown is { } shown ? Sessions.AimKey.Of(shown) : null,
        NextNumber = snapshot.NextNumber,
        Place = snapshot.Place,
        Turn = snapshot.Turn is { } turn && snapshot.Block is not { Feedback.When: FeedbackWhen.Every or FeedbackWhen.Outside } ? turn with { Balls = [] } : snapshot.Turn,
        Told = snapshot.Told,
    };
}
