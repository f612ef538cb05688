using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds.Tests;

/// <summary>Short ways to look at what a feed gave.</summary>
internal static class FeedItems
{
    public static List<FeedItem> Read(string text, CsvSettings? settings = null) =>
        [.. CsvShots.Read(new StringReader(text), "shots.csv", settings ?? TestLane.Settings)];

    public static List<Shot> Shots(this IEnumerable<FeedItem> items) => [.. items.OfType<FeedItem.ShotRead>().Select(item => item.Shot)];

    public static List<string> Problems(this IEnumerable<FeedItem> items) =>
        [.. items.OfType<FeedItem.Unreadable>().Select(item => item.Problem.ToString())];

    public static double? BoardAt(this Shot shot, double feet)
    {
        foreach (var crossing in shot.Crossings)
        {
            if (crossing.Distance == Feet.FromFeet(feet))
            {
                return crossing.Board.Boards;
            }
        }

        return null;
    }
}
