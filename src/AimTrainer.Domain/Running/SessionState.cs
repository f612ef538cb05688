namespace AimTrainer.Domain;

/// <summary>A session at one moment. Immutable: a step makes a new one.</summary>
public sealed record SessionState
{
    internal SessionState()
    {
    }

    /// <summary>What was fixed before the first shot.</summary>
    public required SessionSetup Setup { get; init; }

    /// <summary>The drill as it is thrown.</summary>
    public required DrillScript Drill { get; init; }

    /// <summary>Its blocks with every target in its place.</summary>
    public required ValueList<ResolvedBlock> Blocks { get; init; }

    /// <summary>What the session is doing.</summary>
    public SessionPhase Phase { get; init; }

    /// <summary>The number of the last shot that was graded; 0 before the first.</summary>
    public int LastNumber { get; init; }

    /// <summary>What the next shot is thrown at; null before the first block and after the last.</summary>
    public Aim? Shown => Current?.Shown;

    /// <summary>
    /// What is shown after the next shot if the block goes on, as wide as it is now; null when that hangs on what comes of the shot,
    /// when the block is certain or likely to end with it (its last shot, a row of holds one short), and when nothing is shown.
    /// </summary>
    public Aim? Next => new SessionStepper(this, default).Next();

    /// <summary>In a comparison which ball is thrown next; else null.</summary>
    public BallTurn? Turn => Current is { } block ? ComparedBalls.Turn(block, Setup.Balls) : null;

    /// <summary>Which block is thrown, from 0; null before the first and after the last.</summary>
    public int? BlockIndex => Current?.Index;

    /// <summary>The run of that block; null likewise.</summary>
    public int? Run => Current?.Run;

    /// <summary>Shots of that run that count.</summary>
    public int Throws => Current?.Throws ?? 0;

    /// <summary>For a walking line its place, from 1; else 0.</summary>
    public int Place => Current?.Place ?? 0;

    internal BlockRun? Current { get; init; }

    internal History? Past { get; init; }

    /// <summary>Whether shots are remembered, so that a later input can be about one of them.</summary>
    internal bool RemembersShots { get; init; } = true;

    /// <summary>Which block of the drill each run was, in order.</summary>
    internal ValueList<int> RunBlocks { get; init; } = [];

    internal DateTimeOffset? PausedAt { get; init; }

    /// <summary>
    /// The same session for shots alone, as many as there may be: it remembers none of them longer than its feedback needs. So
    /// nothing can be voided, corrected or repeated, and <see cref="ShotsOfRun"/> and <see cref="FindShot"/> know only a few.
    /// </summary>
    public SessionState ForShotsAlone() => this with { RemembersShots = false };

    /// <summary>The shots of the run that is thrown, or of the last one when the session is over; newest first, voided ones included.</summary>
    public IEnumerable<GradedShot> ShotsOfRun() =>
        History.Items(Past, RunBlocks.Count - 1).OfType<HistoryItem.Thrown>().Select(thrown => thrown.Shot);

    /// <summary>A shot by its number, as it stands now; null when there is none.</summary>
    public GradedShot? FindShot(int number) => History.Find(Past, number)?.Shot;
}
