namespace AimTrainer.Domain;

/// <summary>What a session is doing.</summary>
public enum SessionPhase
{
    /// <summary>Set up; cautions are shown, no target yet.</summary>
    Waiting,

    /// <summary>A target is shown and the next shot counts.</summary>
    Throwing,

    /// <summary>Shots are set aside until it goes on.</summary>
    Paused,

    /// <summary>Over.</summary>
    Ended,
}
