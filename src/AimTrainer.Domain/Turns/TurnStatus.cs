namespace AimTrainer.Domain;

/// <summary>How a bowler stands in the order of a lane.</summary>
public enum TurnStatus
{
    /// <summary>Takes turns.</summary>
    Here,

    /// <summary>Has left for now: is passed over, and may come back.</summary>
    Away,

    /// <summary>The session is over.</summary>
    Done,
}
