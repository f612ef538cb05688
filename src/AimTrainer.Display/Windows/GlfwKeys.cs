namespace AimTrainer.Display;

/// <summary>From GLFW's key numbers to the runtime's. Source: glfw3.h of GLFW 3.3.</summary>
internal static class GlfwKeys
{
    private const int A = 65, Z = 90, Digit0 = 48, Digit9 = 57, Pad0 = 320, Pad9 = 329;

    /// <summary>The key; none for one that means nothing here.</summary>
    public static ConsoleKey From(int key) => key switch
    {
        32 => ConsoleKey.Spacebar,
        256 => ConsoleKey.Escape,
        257 or 335 => ConsoleKey.Enter,
        258 => ConsoleKey.Tab,
        259 => ConsoleKey.Backspace,
        261 => ConsoleKey.Delete,
        262 => ConsoleKey.RightArrow,
        263 => ConsoleKey.LeftArrow,
        264 => ConsoleKey.DownArrow,
        265 => ConsoleKey.UpArrow,
        266 => ConsoleKey.PageUp,
        267 => ConsoleKey.PageDown,
        >= Digit0 and <= Digit9 => ConsoleKey.D0 + (key - Digit0),
        >= A and <= Z => ConsoleKey.A + (key - A),
        >= Pad0 and <= Pad9 => ConsoleKey.NumPad0 + (key - Pad0),
        _ => ConsoleKey.None,
    };
}
