using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Web.Pages;

/// <summary>Words and numbers for people on the pages.</summary>
internal static class Say
{
    public static string Of(Hand hand) => hand == Hand.Right ? "right" : "left";

    public static string Of(DateTimeOffset time) => time.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    public static string Of(double? number, int digits = 2) => number is { } value ? Math.Round(value, digits).ToString(CultureInfo.InvariantCulture) : "?";

    public static string Percent(double? part) => part is { } value ? $"{Math.Round(value * 100).ToString(CultureInfo.InvariantCulture)} %" : "?";

    public static string Count(int count, string one) => $"{count.ToString(CultureInfo.InvariantCulture)} {one}{(count == 1 ? "" : "s")}";

    /// <summary>How far a shot missed, to which side in the bowler's own sense.</summary>
    public static string Miss(BoardOffset? miss, Hand hand)
    {
        if (miss is not { } offset)
        {
            return "not measured";
        }

        if (offset.ExactBoards == 0)
        {
            return "on the centre";
        }

        var inside = offset.ExactBoards > 0;
        var boards = Math.Abs(offset.ExactBoards);
        return $"{boards.ToString(CultureInfo.InvariantCulture)} {(boards == 1 ? "board" : "boards")} {((hand == Hand.Left) == inside ? "right" : "left")} ({(inside ? "inside" : "outside")})";
    }

    /// <summary>Held, not held, or not known: a sign, its colour's name, and the word.</summary>
    public static (string Sign, string Kind, string Word) Mark(bool? held) => held switch
    {
        true => ("●", "hit", "hit"),
        false => ("✕", "miss", "miss"),
        null => ("?", "unknown", "not measured"),
    };
}
