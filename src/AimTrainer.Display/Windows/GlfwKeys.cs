namespace AimTrainer.Display;

/// <summary>From GLFW's key numbers to ours. Source: glfw3.h of GLFW 3.3.</summary>
internal static class GlfwKeys
{
    public static DisplayKey From(int key) => key switch
    {
        32 => DisplayKey.Space,
        85 => DisplayKey.Undo,
        256 => DisplayKey.Leave,
        257 or 335 => DisplayKey.Accept,
        258 => DisplayKey.Next,
        259 => DisplayKey.Back,
        262 => DisplayKey.Right,
        263 => DisplayKey.Left,
        264 => DisplayKey.Down,
        265 => DisplayKey.Up,
        _ => DisplayKey.None,
    };
}
