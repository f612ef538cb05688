using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>The lanes that shots were thrown on: how far the ball runs straight and how wide a board is are each lane's own.</summary>
/// <param name="Newest">The lane of the newest session, which is drawn.</param>
/// <param name="BySession">The lane of each session; a session that is not in it was thrown on the newest one's.</param>
public sealed record ReportLanes(LaneProfile Newest, IReadOnlyDictionary<string, LaneProfile> BySession)
{
    /// <summary>One lane for all.</summary>
    public static ReportLanes All(LaneProfile lane) => new(lane, new Dictionary<string, LaneProfile>(StringComparer.Ordinal));

    /// <summary>The lane of a session.</summary>
    public LaneProfile Of(string? sessionId) => sessionId is not null && BySession.TryGetValue(sessionId, out var lane) ? lane : Newest;

    /// <summary>What about a lane makes shots on it comparable: two names for the same lane are one.</summary>
    internal static (Inches Width, Feet Straight, Feet Arrows) Sort(LaneProfile lane) => (lane.Width, lane.StraightDistance, lane.ArrowsDistance);
}
