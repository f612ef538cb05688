using AimTrainer.Analysis;

namespace AimTrainer.Sessions;

/// <summary>What bounds the memory of a question about practice.</summary>
public static class PracticeLimits
{
    /// <summary>At most so many sessions, the newest: as many as a trend takes.</summary>
    public const int MostSessions = TheilSen.MostPoints;

    /// <summary>At most so many sums, the newest.</summary>
    public const int MostBlocks = 40_000;

    /// <summary>At most so many shots of a lane picture.</summary>
    public const int MostShots = 2_000;
}
