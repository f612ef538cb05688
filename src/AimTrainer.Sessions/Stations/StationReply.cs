using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What a station answers to a message.</summary>
public abstract record StationReply
{
    /// <summary>Followed, and kept: what came of it survives a kill from now on.</summary>
    /// <param name="Entry">What was kept; null when nothing came of it (a tick of the clock that ended nothing).</param>
    public sealed record Kept(LogEntry? Entry) : StationReply
    {
        /// <summary>The session that took it; on a lane that several bowlers share it is the thrower's. Null when it is no step of a session.</summary>
        public string? SessionId { get; init; }
    }

    /// <summary>The same shot, or an action of the same id, came before; it was taken once.</summary>
    /// <param name="SessionId">Which session took it.</param>
    public sealed record TakenBefore(string SessionId) : StationReply;

    /// <summary>A shot at another aim than the one that is due now: it was not graded, since nobody aimed at that one.</summary>
    /// <param name="Due">What is due now.</param>
    public sealed record OtherAim(Aim Due) : StationReply;

    /// <summary>Not followed, and why.</summary>
    /// <param name="Why">What is in the way and what to do.</param>
    public sealed record Refused(string Why) : StationReply;

    /// <summary>The store could not keep it: nothing of it counts. It may be sent again.</summary>
    /// <param name="Why">What happened and what to do.</param>
    public sealed record NotKept(string Why) : StationReply;
}
