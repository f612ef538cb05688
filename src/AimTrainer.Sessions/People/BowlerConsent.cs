namespace AimTrainer.Sessions;

/// <summary>What was agreed with a bowler about the record. Kept in <c>people.json</c>, not in the log of shots.</summary>
public sealed record BowlerConsent
{
    /// <summary>The name in the records.</summary>
    public required string Bowler { get; init; }

    /// <summary>Whether under age.</summary>
    public bool IsMinor { get; init; }

    /// <summary>Who agreed for a minor; null when nobody did, or the bowler is of age.</summary>
    public string? Guardian { get; init; }

    /// <summary>When the guardian agreed.</summary>
    public DateOnly? GuardianAgreedOn { get; init; }

    /// <summary>How the name is to be shown on screens.</summary>
    public NameShown Shown { get; init; }

    /// <summary>When that was chosen; null when it never was.</summary>
    public DateOnly? ChosenOn { get; init; }

    /// <summary>Whether a guardian's consent is on record.</summary>
    public bool HasGuardian => Guardian is not null && GuardianAgreedOn is not null;
}
