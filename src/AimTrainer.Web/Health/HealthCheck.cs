namespace AimTrainer.Web;

/// <summary>One thing that was looked at.</summary>
/// <param name="Name">What.</param>
/// <param name="Ok">Whether it is well.</param>
/// <param name="Found">What was found, and when it is not well what to do.</param>
public sealed record HealthCheck(string Name, bool Ok, string Found)
{
    /// <summary>Whether the lanes cannot do their work without it. What is not needed only degrades the host.</summary>
    public bool Needed { get; init; } = true;
}
