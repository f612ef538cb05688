namespace AimTrainer.Domain;

/// <summary>How much the bowler is told of a shot.</summary>
public enum FeedbackSays
{
    /// <summary>Held or not.</summary>
    Hit,

    /// <summary>Held or not, and on which side the ball crossed.</summary>
    Side,

    /// <summary>Held or not, the side, and by how many boards.</summary>
    Exact,
}
