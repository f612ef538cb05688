namespace AimTrainer.Sessions;

/// <summary>How a bowler's name is shown on screens that others see.</summary>
public enum NameShown
{
    /// <summary>Initials: what holds unless somebody chose otherwise.</summary>
    Initials,

    /// <summary>The first word of the name.</summary>
    GivenName,

    /// <summary>The whole name; never for a minor.</summary>
    FullName,
}
