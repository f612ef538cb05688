using System.Diagnostics;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What waits in a station's channel.</summary>
internal abstract record StationMessage
{
    /// <summary>Where the answer goes.</summary>
    public TaskCompletionSource<StationReply> Reply { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>The trace that it belongs to; nothing when nobody traces.</summary>
    public ActivityContext Trace { get; init; }

    internal sealed record Start(SessionSetup Setup, DrillSource Drill) : StationMessage;

    internal sealed record GoOn(StoredSession Stored) : StationMessage;

    /// <param name="Input">What is to be done.</param>
    /// <param name="SessionId">The session that it is meant for; null for whichever there is.</param>
    internal sealed record Follow(SessionInput Input, string? SessionId = null) : StationMessage
    {
        /// <summary>The <see cref="AimTrainer.Sessions.AimKey"/> of the aim that a shot was logged at; null for whichever is shown.</summary>
        public string? AimKey { get; init; }
    }

    /// <summary>One more bowler comes to the lane.</summary>
    internal sealed record Join(SessionSetup Setup, DrillSource Drill) : StationMessage;

    /// <summary>People change the order.</summary>
    internal sealed record Turn(TurnChange Change, int? Seen) : StationMessage;

    /// <summary>The lane goes on with the bowlers that it was left with.</summary>
    internal sealed record GoOnTogether(Lineup Lineup) : StationMessage;

    /// <summary>What is over of this bowler is not shown any more.</summary>
    internal sealed record Forget(string Bowler) : StationMessage;

    /// <summary>What may be shown of a name was changed.</summary>
    internal sealed record NamesChanged : StationMessage;
}
