using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>
/// The plain numbers of one throw as they arrived from the world, not yet checked. <see cref="Check"/> turns them into a
/// <see cref="Shot"/>, or says everything that is wrong with them.
/// </summary>
public sealed class ShotReading
{
    /// <summary>
    /// Lowest and highest board of a ball that was seen: the lane, 0.5 to 39.5, and the middle of the gutter on either side (a
    /// ball in the gutter is a real miss, and runs about 4.4 boards outside the edge).
    /// </summary>
    public const double LowestBoard = -4, HighestBoard = 44;

    private const string NamedLater = "";

    private readonly List<(double Feet, double Boards)> _crossings = [];

    /// <summary>The sender's own name for this shot.</summary>
    public string? Id { get; set; }

    /// <summary>When it was thrown.</summary>
    public DateTimeOffset? Time { get; set; }

    /// <summary>Where the shot came from.</summary>
    public ShotSource Source { get; set; }

    /// <summary>Board at the foul line.</summary>
    public double? LaydownBoard { get; set; }

    /// <summary>Board of the breakpoint.</summary>
    public double? BreakpointBoard { get; set; }

    /// <summary>Distance of the breakpoint, feet.</summary>
    public double? BreakpointFeet { get; set; }

    /// <summary>Board at 60 ft.</summary>
    public double? EntryBoard { get; set; }

    /// <summary>Degrees, positive into the pocket.</summary>
    public double? EntryAngleDegrees { get; set; }

    /// <summary>Degrees, positive outward.</summary>
    public double? LaunchAngleDegrees { get; set; }

    /// <summary>Miles per hour.</summary>
    public double? SpeedMilesPerHour { get; set; }

    /// <summary>Where the speed was measured.</summary>
    public SpeedPlace SpeedPlace { get; set; } = SpeedPlace.Unknown;

    /// <summary>Revolutions per minute.</summary>
    public double? RevsRpm { get; set; }

    /// <summary>Degrees.</summary>
    public double? AxisRotationDegrees { get; set; }

    /// <summary>Degrees.</summary>
    public double? AxisTiltDegrees { get; set; }

    /// <summary>Pins knocked down.</summary>
    public int? Pins { get; set; }

    /// <summary>The ball's name.</summary>
    public string? Ball { get; set; }

    /// <summary>Anything else.</summary>
    public string? Note { get; set; }

    /// <summary>Adds a crossing.</summary>
    /// <param name="feet">Feet past the foul line.</param>
    /// <param name="boards">The bowler's board.</param>
    public void AddCrossing(double feet, double boards) => _crossings.Add((feet, boards));

    /// <summary>Checks every value against its range and rounds it once.</summary>
    /// <param name="problems">Everything that is wrong; empty when a shot is returned.</param>
    /// <returns>The shot, or null when anything is wrong.</returns>
    public Shot? Check(out ValueList<ReadingProblem> problems)
    {
        var found = new List<ReadingProblem>();
        if (BreakpointFeet is not null && BreakpointBoard is null)
        {
            found.Add(new("breakpointFeet", "a distance without a board", "breakpointBoard beside it"));
        }

        var breakpointBoard = Place("breakpointBoard", BreakpointBoard, found);
        var breakpointDistance = Within("breakpointFeet", BreakpointFeet, 0, 60, found) is { } feet ? Feet.FromMeasurement(feet) : (Feet?)null;
        var shot = new Shot
        {
            Id = Words("id", Id, 200, found),
            Time = Time,
            Source = Source,
            Crossings = CheckedCrossings(found),
            Laydown = Place("laydownBoard", LaydownBoard, found),
            Breakpoint = breakpointBoard is { } board ? new Breakpoint(board, breakpointDistance) : null,
            Entry = Place("entryBoard", EntryBoard, found),
            EntryAngle = Angle("entryAngleDeg", EntryAngleDegrees, -20, 20, found),
            LaunchAngle = Angle("launchAngleDeg", LaunchAngleDegrees, -20, 20, found),
            Speed = Within("speedMph", SpeedMilesPerHour, 1, 40, found) is { } mph
                ? new BallSpeed(MilesPerHour.FromMeasurement(mph), SpeedPlace) : null,
            Revs = Within("revsRpm", RevsRpm, 0, 1000, found) is { } rpm ? Rpm.FromMeasurement(rpm) : null,
            AxisRotation = Angle("axisRotationDeg", AxisRotationDegrees, -180, 180, found),
            AxisTilt = Angle("axisTiltDeg", AxisTiltDegrees, -90, 90, found),
            Pins = Within("pins", Pins, 0, 10, found) is { } pins ? (int)pins : null,
            Ball = Words("ball", Ball, 200, found),
            Note = Words("note", Note, 2000, found),
        };
        problems = found.ToValueList();
        return found.Count == 0 ? shot : null;
    }

    private ValueList<Crossing> CheckedCrossings(List<ReadingProblem> found)
    {
        if (_crossings.Count == 0)
        {
            return [];
        }

        var crossings = new List<Crossing>(_crossings.Count);
        foreach (var (feet, boards) in _crossings)
        {
            // Names are made only for what is wrong: a million rows are read with this.
            var before = found.Count;
            var distance = Within(NamedLater, feet, 0, 60, found);
            if (Place(NamedLater, boards, found) is { } board && distance is { } known)
            {
                crossings.Add(new Crossing(Feet.FromMeasurement(known), board));
            }

            for (var i = before; i < found.Count; i++)
            {
                var ofDistance = i == before && distance is null ? " (feet)" : "";
                found[i] = found[i] with { Field = string.Create(CultureInfo.InvariantCulture, $"boardAt{feet}{ofDistance}") };
            }
        }

        crossings.Sort((left, right) => left.Distance.CompareTo(right.Distance));
        for (var i = crossings.Count - 1; i > 0; i--)
        {
            if (crossings[i].Distance != crossings[i - 1].Distance)
            {
                continue;
            }

            if (crossings[i].Board != crossings[i - 1].Board)
            {
                found.Add(new($"boardAt{crossings[i].Distance}", $"two boards, {crossings[i - 1].Board} and {crossings[i].Board}", "one board a distance"));
            }

            crossings.RemoveAt(i);
        }

        return crossings.ToValueList();
    }

    private static Board? Place(string field, double? boards, List<ReadingProblem> found) =>
        Within(field, boards, LowestBoard, HighestBoard, found) is { } value ? Board.FromMeasurement(value) : null;

    private static Degrees? Angle(string field, double? degrees, double low, double high, List<ReadingProblem> found) =>
        Within(field, degrees, low, high, found) is { } value ? Degrees.FromMeasurement(value) : null;

    private static double? Within(string field, double? value, double low, double high, List<ReadingProblem> found)
    {
        if (value is not { } number || (number >= low && number <= high))
        {
            return value;
        }

        found.Add(new(field, number.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"{low} to {high}")));
        return null;
    }

    private static string? Words(string field, string? text, int longest, List<ReadingProblem> found)
    {
        if (text is not null && text.Length > longest)
        {
            found.Add(new(field, $"{text.Length} characters", $"at most {longest}"));
        }

        return string.IsNullOrWhiteSpace(text) ? null : text.Trim();
    }
}
