namespace AimTrainer.Display;

/// <summary>The numbers that GLFW's header gives its hints and events. Source: glfw3.h of GLFW 3.3.</summary>
internal static class GlfwNames
{
    public const int False = 0, True = 1;

    public const int Release = 0, Press = 1, Repeat = 2;

    public const int ModShift = 0x1;

    public const int NoError = 0, ApiUnavailable = 0x10006, VersionUnavailable = 0x10007, PlatformError = 0x10008, FormatUnavailable = 0x10009;

    public const int Focused = 0x20001, Resizable = 0x20003, Visible = 0x20004, Decorated = 0x20005, AutoIconify = 0x20006, Floating = 0x20007;

    public const int FocusOnShow = 0x2000C;

    public const int DepthBits = 0x21005, StencilBits = 0x21006, SrgbCapable = 0x2100E, DoubleBuffer = 0x21010;

    public const int ContextVersionMajor = 0x22002, ContextVersionMinor = 0x22003, OpenGlForwardCompatible = 0x22006, OpenGlProfile = 0x22008;

    public const int OpenGlCoreProfile = 0x32001;

    public const int Cursor = 0x33001, CursorNormal = 0x34001, CursorHidden = 0x34002;
}
