using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Web.Pages;

/// <summary>Words and numbers for people on the pages.</summary>
internal static class Say
{
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";

    public static string Of(double? number, int digits = 2) => number is { } value ? Math.Round(value, digits).ToString(CultureInfo.InvariantCulture) : "?";

    public static string Percent(double? part) => part is { } value ? $"{(Math.Round(value * 100) + 0.0).ToString(CultureInfo.InvariantCulture)} %" : "?";

    public static string Count(int count, string one) => $"{count.ToString(CultureInfo.InvariantCulture)} {one}{(count == 1 ? "" : "s")}";

    public static string Count(int count, string one, string many) => $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : many)}";

    public static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Exact(decimal number) => number.ToString("0.####", CultureInfo.InvariantCulture);

    public static string Boards(decimal boards) => $"{Exact(boards)} {(Math.Abs(boards) == 1 ? "board" : "boards")}";

    /// <summary>How far a shot missed, to which side in the bowler's own sense.</summary>
    public static string Miss(decimal boards, Hand hand)
    {
        var inside = boards > 0;
        return boards == 0 ? "on the centre"
            : $"{Boards(Math.Abs(boards))} {((hand == Hand.Left) == inside ? "right" : "left")} ({(inside ? "inside" : "outside")})";
    }

    /// <summary>What ends a block.</summary>
    public static string Ends(BlockEnd until) => string.Join(" or ", new[]
    {
        until.Shots is { } shots ? Count(shots, "shot") : null,
        until.Minutes is { } minutes ? $"{Of(minutes)} min" : null,
        until.HitsInARow is { } row ? $"{row.ToString(CultureInfo.InvariantCulture)} held in a row" : null,
        until.WidthReached is { } width ? $"a width of {Boards(width.ExactBoards)}" : null,
    }.OfType<string>());

    /// <summary>Held, not held, or not known: a sign, its colour's name, and the word.</summary>
    public static (string Sign, string Kind, string Word) Mark(bool? held) => held switch
    {
        true => ("●", "hit", "hit"),
        false => ("✕", "miss", "miss"),
        null => ("?", "unknown", "not measured"),
    };
}
