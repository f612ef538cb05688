using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>What shots may be put apart by: the name on the command line and in an address, and the words for people.</summary>
public static class FigureNames
{
    /// <summary>All of them, in the order in which they are offered.</summary>
    public static IReadOnlyList<(Grouping By, string Name, string Words)> All { get; } =
    [
        (Grouping.Drill, "drill", "drill"),
        (Grouping.Block, "block", "block"),
        (Grouping.Ball, "ball", "ball"),
        (Grouping.Line, "line", "line"),
        (Grouping.LanePart, "lane-part", "part of the lane"),
        (Grouping.SpeedBand, "speed", "speed"),
        (Grouping.Ten, "ten", "ten shots of a session, early to late"),
        (Grouping.Session, "session", "session"),
    ];

    /// <summary>The names, for a message.</summary>
    public static string Allowed { get; } = string.Join(", ", All.Select(each => each.Name));

    /// <summary>The grouping of a name; null when there is none.</summary>
    public static Grouping? Find(string? name) => All.Where(each => each.Name == name).Select(each => (Grouping?)each.By).FirstOrDefault();

    /// <summary>The words for people.</summary>
    public static string Of(Grouping by) => All.First(each => each.By == by).Words;
}
