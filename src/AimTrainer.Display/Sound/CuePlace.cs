namespace AimTrainer.Display;

/// <summary>Where a note is heard from.</summary>
public enum CuePlace
{
    /// <summary>Both loudspeakers alike.</summary>
    Centre,

    /// <summary>Mostly the left loudspeaker.</summary>
    Left,

    /// <summary>Mostly the right loudspeaker.</summary>
    Right,
}
