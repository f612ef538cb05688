namespace AimTrainer.Display;

/// <summary>The keys that a window reports; others are left alone.</summary>
public enum DisplayKey
{
    /// <summary>A key that means nothing here.</summary>
    None,

    /// <summary>Arrow to the left.</summary>
    Left,

    /// <summary>Arrow to the right.</summary>
    Right,

    /// <summary>Arrow up.</summary>
    Up,

    /// <summary>Arrow down.</summary>
    Down,

    /// <summary>Enter, also that of the number pad.</summary>
    Accept,

    /// <summary>Backspace.</summary>
    Back,

    /// <summary>Tab.</summary>
    Next,

    /// <summary>Escape.</summary>
    Leave,

    /// <summary>The space bar.</summary>
    Space,

    /// <summary>U.</summary>
    Undo,
}
