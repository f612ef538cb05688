namespace AimTrainer.Display;

/// <summary>Which part of a line of writing is at its anchor.</summary>
public enum TextAlign
{
    /// <summary>Its left end, as read.</summary>
    Left,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end, as read.</summary>
    Right,
}
