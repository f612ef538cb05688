using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>How things are said to people.</summary>
internal static class Words
{
    /// <summary>"1.3 inside (left)", "0.4 outside (right)" or "on the centre"; the sides as the bowler sees them.</summary>
    public static string Miss(BoardOffset miss, Hand hand) => miss.CompareTo(BoardOffset.Zero) switch
    {
        0 => "on the centre",
        > 0 => $"{Number(miss.Boards)} inside ({(hand == Hand.Right ? "left" : "right")})",
        _ => $"{Number(-miss.Boards)} outside ({(hand == Hand.Right ? "right" : "left")})",
    };

    /// <summary>A target: "board 10 at 15 ft, 3 boards wide".</summary>
    public static string Target(Target target) =>
        $"board {target.Centre} at {target.Distance} ft, {target.Width} {(target.Width.Boards == 1 ? "board" : "boards")} wide";

    /// <summary>Why a block ended.</summary>
    public static string Ended(BlockEndReason why) => why switch
    {
        BlockEndReason.Shots => "all shots thrown",
        BlockEndReason.HitsInARow => "held often enough in a row",
        BlockEndReason.WidthReached => "width reached",
        BlockEndReason.Minutes => "time is up",
        BlockEndReason.WalkDone => "the walk is done",
        BlockEndReason.Skipped => "left for the next block",
        BlockEndReason.Repeated => "begun again",
        BlockEndReason.SessionEnded => "the session ended first",
        _ => throw new ArgumentOutOfRangeException(nameof(why)),
    };

    /// <summary>A number to two decimals, without needless zeros.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A number to two decimals, or a dash when it is not known.</summary>
    public static string Number(double? value) => value is { } known ? Number(known) : "-";

    /// <summary>A share as whole per cent, or a dash.</summary>
    public static string Percent(double? value) => value is { } known ? (known * 100).ToString("0", CultureInfo.InvariantCulture) + " %" : "-";

    /// <summary>The hand.</summary>
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";
}
