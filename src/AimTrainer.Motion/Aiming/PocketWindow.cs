namespace AimTrainer.Motion;

/// <summary>Where a ball must arrive: boards and angles, both limits in it. Bare doubles whose names carry the unit.</summary>
/// <param name="LowBoard">Least board of the ball's middle.</param>
/// <param name="HighBoard">Most.</param>
/// <param name="LowAngleDegrees">Least angle, positive inward.</param>
/// <param name="HighAngleDegrees">Most.</param>
/// <param name="Place">Where both are taken.</param>
public sealed record PocketWindow(double LowBoard, double HighBoard, double LowAngleDegrees, double HighAngleDegrees, WindowPlace Place = WindowPlace.Contact)
{
    /// <summary>Boards 17 to 18 with 4 to 6 degrees, taken at the head pin.</summary>
    /// <remarks>
    /// Source: governing body, the highest share of strikes from the pocket: reprint "Ridenour 3 pin 10 pin",
    /// wiki.bowlingchat.net. It does not say where along the last foot the board is taken: at the touch is our reading.
    /// </remarks>
    public static PocketWindow Published { get; } = new(17, 18, 4, 6);

    /// <summary>What is wrong and what is allowed, or null.</summary>
    public string? Problem() =>
        !(LowBoard >= 0.5 && HighBoard <= 39.5 && LowBoard < HighBoard)
            ? FormattableString.Invariant($"a window of boards {LowBoard} to {HighBoard}; allowed: two that rise, 0.5 to 39.5")
        : !(LowAngleDegrees >= -20 && HighAngleDegrees <= 20 && LowAngleDegrees < HighAngleDegrees)
            ? FormattableString.Invariant($"a window of {LowAngleDegrees} to {HighAngleDegrees} degrees; allowed: two that rise, -20 to 20")
        : null;

    /// <summary>Whether the board is in it; a ball in the gutter or past the head pin is not.</summary>
    public bool HasBoard(in PathEnd end) => Board(end) >= LowBoard && Board(end) <= HighBoard;

    /// <summary>Whether the angle is in it.</summary>
    public bool HasAngle(in PathEnd end) => Angle(end) >= LowAngleDegrees && Angle(end) <= HighAngleDegrees;

    /// <summary>Whether the ball reaches it.</summary>
    public bool Has(in PathEnd end) => HasBoard(end) && HasAngle(end);

    /// <summary>The board that is held against it; not a number when the ball never gets there.</summary>
    public double Board(in PathEnd end) => Place == WindowPlace.Contact ? end.ContactBoard : end.BoardAt60;

    /// <summary>The angle that is held against it.</summary>
    public double Angle(in PathEnd end) => Place == WindowPlace.Contact ? end.ContactAngleDegrees : end.AngleAt60Degrees;
}
