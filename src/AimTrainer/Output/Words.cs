using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>How things are said to people.</summary>
internal static class Words
{
    /// <summary>"1.30 left", "0.40 right" or "on centre": the sides as the bowler sees them.</summary>
    /// <param name="boards">Boards, positive inside.</param>
    /// <param name="hand">Whose.</param>
    public static string Miss(double boards, Hand hand) => TwoPlaces(Math.Abs(boards)) switch
    {
        "0.00" => "on centre",
        var size => $"{size} {(boards > 0 == (hand == Hand.Right) ? "left" : "right")}",
    };

    /// <summary>A target: "board 10 at 15 ft, 3 boards wide".</summary>
    public static string Target(Target target) =>
        $"board {target.Centre} at {target.Distance} ft, {Boards(target.Width)} wide";

    /// <summary>"1 board", "2.5 boards".</summary>
    public static string Boards(BoardOffset width) => $"{width} {(width.Boards == 1 ? "board" : "boards")}";

    /// <summary>"1 shot", "2 shots".</summary>
    public static string Count(long count, string one) => string.Create(CultureInfo.InvariantCulture, $"{count} {one}{(count == 1 ? "" : "s")}");

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

    /// <summary>A number to two decimals, without needless zeros.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A number with exactly two decimals, for columns; a dash when it is not known.</summary>
    public static string TwoPlaces(double? value) => value is { } known ? known.ToString("0.00", CultureInfo.InvariantCulture) : "-";

    /// <summary>A number to two decimals, or a dash when it is not known.</summary>
    public static string Number(double? value) => value is { } known ? Number(known) : "-";

    /// <summary>A share as whole per cent with its sign, or a dash.</summary>
    public static string Percent(double? value) => value is null ? "-" : WholePercent(value) + " %";

    /// <summary>A share as whole per cent without its sign, or a dash.</summary>
    public static string WholePercent(double? value) => value is { } known ? (known * 100).ToString("0", CultureInfo.InvariantCulture) : "-";

    /// <summary>The hand.</summary>
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";
}
