namespace AimTrainer.Store;

/// <summary>
/// A statement that keeps part of a step. SQL by hand, unlike everything else, because a shot waits for these: EF would track,
/// compare and translate about ten rows anew for each. Every database that we use takes this SQL as it is; the names are those of
/// <see cref="RecordContext"/>, and the tests read back through it.
/// </summary>
internal sealed class StepStatement
{
    private static readonly string[] ShotColumns =
    [
        "session_key", "number", "ball_id", "at", "run", "block_name", "block_kind", "aim", "place", "held", "points",
        "comparable", "void_reason", "simulated", "launch_angle_degrees", "launch_angle_computed", "laydown_board",
        "breakpoint_board", "breakpoint_feet", "entry_board", "entry_angle_degrees", "speed_mph", "speed_at", "revs_rpm",
        "axis_rotation_degrees", "axis_tilt_degrees", "pins", "shot_json",
    ];

    private StepStatement(int index, string sql, params string[] names) => (Index, Sql, Names) = (index, sql, names);

    /// <summary>Its place in <see cref="All"/>, for whoever keeps something beside each statement.</summary>
    public int Index { get; }

    /// <summary>The text; parameter <c>@name</c> for each name.</summary>
    public string Sql { get; }

    /// <summary>The parameters, in the order in which values are given.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>How far a session has come.</summary>
    public static StepStatement FindSession { get; } = new(
        0,
        """
        SELECT key, bowler_id, ball_id, simulated, run, block_name, block_kind,
            (SELECT coalesce(max(sequence), 0) FROM log_steps WHERE session_key = sessions.key)
        FROM sessions WHERE id = @id
        """,
        "id");

    /// <summary>Adds a step to the log.</summary>
    public static StepStatement AddStep { get; } = Insert(1, "log_steps", "session_key", "sequence", "at", "input_json", "events_json");

    /// <summary>Adds a graded shot.</summary>
    public static StepStatement AddShot { get; } = Insert(2, "graded_shots", ShotColumns);

    /// <summary>Adds a target of a graded shot.</summary>
    public static StepStatement AddTarget { get; } = Insert(
        3, "shot_targets", "session_key", "number", "position", "name", "distance_feet", "centre_board", "width_boards",
        "crossing", "crossing_board", "miss_boards", "grade", "held", "points");

    /// <summary>Adds a ball unless it is there.</summary>
    public static StepStatement AddBall { get; } = new(
        4, "INSERT INTO balls (bowler_id, name, key) VALUES (@bowler, @name, @key) ON CONFLICT DO NOTHING", "bowler", "name", "key");

    /// <summary>A ball's id.</summary>
    public static StepStatement FindBall { get; } = new(5, "SELECT id FROM balls WHERE bowler_id = @bowler AND key = @key", "bowler", "key");

    /// <summary>Says why a shot does not count.</summary>
    public static StepStatement VoidShot { get; } = new(
        6, "UPDATE graded_shots SET void_reason = @reason WHERE session_key = @session AND number = @number", "session", "number", "reason");

    /// <summary>Puts a corrected shot in the place of the one that was there.</summary>
    public static StepStatement CorrectShot { get; } = new(
        7,
        $"UPDATE graded_shots SET {string.Join(", ", ShotColumns.Skip(2).Select(column => $"{column} = @{column}"))} "
        + "WHERE session_key = @session_key AND number = @number",
        ShotColumns);

    /// <summary>The block that a shot was thrown in.</summary>
    public static StepStatement BlockOfShot { get; } = new(
        8, "SELECT block_name, block_kind FROM graded_shots WHERE session_key = @session AND number = @number", "session", "number");

    /// <summary>Takes away a shot's targets, for others.</summary>
    public static StepStatement DropTargets { get; } = new(
        9, "DELETE FROM shot_targets WHERE session_key = @session AND number = @number", "session", "number");

    /// <summary>Adds to a session's totals.</summary>
    public static StepStatement AddTotals { get; } = new(
        10,
        """
        UPDATE sessions SET shots = shots + @shots, points = points + @points, run = @run, block_name = @name, block_kind = @kind
        WHERE key = @session
        """,
        "session", "shots", "points", "run", "name", "kind");

    /// <summary>Works out a session's totals again.</summary>
    public static StepStatement CountAgain { get; } = new(
        11,
        """
        UPDATE sessions SET
            shots = (SELECT count(*) FROM graded_shots WHERE session_key = @session AND void_reason IS NULL),
            points = (SELECT coalesce(sum(points), 0) FROM graded_shots WHERE session_key = @session AND void_reason IS NULL)
        WHERE key = @session
        """,
        "session");

    /// <summary>Says when a session was over.</summary>
    public static StepStatement EndSession { get; } = new(12, "UPDATE sessions SET ended_at = @at WHERE key = @session", "session", "at");

    /// <summary>All of them, by <see cref="Index"/>.</summary>
    public static IReadOnlyList<StepStatement> All { get; } =
    [
        FindSession, AddStep, AddShot, AddTarget, AddBall, FindBall, VoidShot, CorrectShot, BlockOfShot, DropTargets, AddTotals, CountAgain, EndSession,
    ];

    private static StepStatement Insert(int index, string table, params string[] columns) =>
        new(index, $"INSERT INTO {table} ({string.Join(", ", columns)}) VALUES (@" + string.Join(", @", columns) + ")", columns);
}
