using AimTrainer.Domain;
using AimTrainer.Reports;

namespace AimTrainer.Output;

/// <summary>How things are said to people.</summary>
internal static class Words
{
    /// <inheritdoc cref="FigureWords.Miss"/>
    public static string Miss(double boards, Hand hand) => FigureWords.Miss(boards, hand);

    /// <summary>A target: "board 10 at 15 ft, 3 boards wide".</summary>
    public static string Target(Target target) =>
        $"board {target.Centre} at {target.Distance} ft, {Boards(target.Width)} wide";

    /// <summary>"1 board", "2.5 boards".</summary>
    public static string Boards(BoardOffset width) => $"{width} {(width.Boards == 1 ? "board" : "boards")}";

    /// <inheritdoc cref="FigureWords.Count"/>
    public static string Count(long count, string one) => FigureWords.Count(count, one);

    /// <summary>Why a block ended.</summary>
    public static string Ended(BlockEndReason why) => why switch
    {
        BlockEndReason.Shots => "all shots thrown",
        BlockEndReason.HitsInARow => "held often enough in a row",
        BlockEndReason.WidthReached => "width reached",
        BlockEndReason.Minutes => "time is up",
        BlockEndReason.WalkDone => "the walk is done",
        BlockEndReason.Compared => "every ball has its throws",
        BlockEndReason.Skipped => "left for the next block",
        BlockEndReason.Repeated => "begun again",
        BlockEndReason.SessionEnded => "the session ended first",
        _ => throw new ArgumentOutOfRangeException(nameof(why)),
    };

    /// <inheritdoc cref="FigureWords.Number(double)"/>
    public static string Number(double value) => FigureWords.Number(value);

    /// <inheritdoc cref="FigureWords.TwoPlaces"/>
    public static string TwoPlaces(double? value) => FigureWords.TwoPlaces(value);

    /// <inheritdoc cref="FigureWords.Number(double?)"/>
    public static string Number(double? value) => FigureWords.Number(value);

    /// <inheritdoc cref="FigureWords.Percent"/>
    public static string Percent(double? value) => FigureWords.Percent(value);

    /// <inheritdoc cref="FigureWords.WholePercent"/>
    public static string WholePercent(double? value) => FigureWords.WholePercent(value);

    /// <summary>The hand.</summary>
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";
}
