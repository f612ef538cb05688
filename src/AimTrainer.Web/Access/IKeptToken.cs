namespace AimTrainer.Web;

/// <summary>A token as it is kept: by its hash alone.</summary>
internal interface IKeptToken
{
    /// <summary>Its name for the audit.</summary>
    string Id { get; }

    /// <summary>SHA-256 of the token.</summary>
    string Hash { get; }
}
