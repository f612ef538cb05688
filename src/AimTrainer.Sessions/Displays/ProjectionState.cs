namespace AimTrainer.Sessions;

/// <summary>Whether all projection is hidden, at every station, on every display.</summary>
/// <param name="Stopped">Whether it is.</param>
/// <param name="Since">Since when; null when it is not.</param>
/// <param name="By">Who stopped it, as the audit calls them; null when it is not, or nobody knows.</param>
public sealed record ProjectionState(bool Stopped, DateTimeOffset? Since, string? By)
{
    /// <summary>Displays show what they are for.</summary>
    public static ProjectionState Free { get; } = new(false, null, null);

    /// <summary>Hidden from now on.</summary>
    public static ProjectionState StoppedBy(string by, DateTimeOffset now) => new(true, now, by);
}
