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

    internal sealed record Follow(SessionInput Input) : StationMessage;
}
