namespace AimTrainer.Domain;

/// <summary>Whether those under age may join; always with a guardian's consent.</summary>
public enum MinorsRule
{
    /// <summary>They may not.</summary>
    No,

    /// <summary>They may.</summary>
    Yes,

    /// <summary>Nobody else may.</summary>
    Only,
}
