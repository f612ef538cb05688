namespace AimTrainer.Motion;

/// <summary>The best line of an advice, for machines.</summary>
/// <param name="LaydownBoard">Its laydown.</param>
/// <param name="LaunchAngleDeg">Its angle, positive outward.</param>
/// <param name="ArrowsFeet">Where the arrows are.</param>
/// <param name="ArrowsBoard">Where the ball that is meant crosses them.</param>
/// <param name="DownlaneFeet">Where the downlane target is.</param>
/// <param name="DownlaneBoard">Where it crosses that distance; null when it does not get there.</param>
/// <param name="Chance">Share of throws that reach the window.</param>
/// <param name="ChanceError">Its standard error from counting.</param>
/// <param name="LowChance">On the worse lanes that it may be.</param>
/// <param name="HighChance">On the better ones.</param>
/// <param name="BoardChance">Share whose board is in the window.</param>
/// <param name="AngleChance">Share whose angle is.</param>
/// <param name="MeantBoard">Board of the ball that is meant, at the window.</param>
/// <param name="MeantAngleDeg">Its angle there.</param>
/// <param name="Room">How far off it may be; null when it does not reach the window itself.</param>
public sealed record AimBestAnswer(
    decimal? LaydownBoard,
    decimal? LaunchAngleDeg,
    decimal? ArrowsFeet,
    decimal? ArrowsBoard,
    decimal? DownlaneFeet,
    decimal? DownlaneBoard,
    decimal? Chance,
    decimal? ChanceError,
    decimal? LowChance,
    decimal? HighChance,
    decimal? BoardChance,
    decimal? AngleChance,
    decimal? MeantBoard,
    decimal? MeantAngleDeg,
    RoomForError? Room)
{
    internal static AimBestAnswer Of(AimAdvice advice, AimSettings settings, double arrowsFeet) => new(
        PlainNumber.Of(advice.Best.Line.LaydownBoard),
        PlainNumber.Of(advice.Best.Line.LaunchAngleDegrees),
        PlainNumber.Of(arrowsFeet),
        PlainNumber.Of(advice.ArrowsBoard),
        PlainNumber.Of(settings.DownlaneFeet),
        PlainNumber.Of(advice.DownlaneBoard),
        PlainNumber.Of(advice.Best.Chance),
        PlainNumber.Of(advice.ChanceError),
        PlainNumber.Of(advice.LowChance),
        PlainNumber.Of(advice.HighChance),
        PlainNumber.Of(advice.Best.BoardChance),
        PlainNumber.Of(advice.Best.AngleChance),
        PlainNumber.Of(settings.Window.Board(advice.Meant)),
        PlainNumber.Of(settings.Window.Angle(advice.Meant)),
        advice.Room);
}
