using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What waits in a station's channel.</summary>
internal abstract record StationMessage
{
    /// <summary>Where the answer goes.</summary>
    public TaskCompletionSource<StationReply> Reply { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    internal sealed record Start(SessionSetup Setup, DrillSource Drill) : StationMessage;

    internal sealed record GoOn(StoredSession Stored) : StationMessage;

    /// <summary>An input for the session that has the turn, or for one of the lane's by its id.</summary>
    internal sealed record Follow(SessionInput Input, string? SessionId = null) : StationMessage;

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
