namespace AimTrainer.Display;

/// <summary>What a display may say of the last shot.</summary>
internal enum LastShotState
{
    /// <summary>What was told.</summary>
    Told,

    /// <summary>That its result is withheld.</summary>
    Withheld,

    /// <summary>That it does not count.</summary>
    Void,
}
