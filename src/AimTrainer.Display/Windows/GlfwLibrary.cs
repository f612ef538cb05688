using System.Runtime.InteropServices;

namespace AimTrainer.Display;

/// <summary>Finds the window library of this system.</summary>
internal static class GlfwLibrary
{
    /// <summary>What it is called here, the likeliest first.</summary>
    public static IReadOnlyList<string> Names { get; } =
        OperatingSystem.IsWindows() ? ["glfw3.dll"]
        : OperatingSystem.IsMacOS() ? ["libglfw.3.dylib", "/opt/homebrew/lib/libglfw.3.dylib", "/usr/local/lib/libglfw.3.dylib"]
        : ["libglfw.so.3", "libglfw.so"];

    /// <summary>How a user gets it here.</summary>
    public static string HowToGet { get; } =
        OperatingSystem.IsWindows() ? "put the 64-bit glfw3.dll of GLFW 3.3 or newer beside aimtrainer.exe"
        : OperatingSystem.IsMacOS() ? "brew install glfw"
        : "apt install libglfw3";

    /// <summary>How a user gets OpenGL here.</summary>
    public static string HowToGetOpenGl { get; } =
        OperatingSystem.IsLinux() ? "install the graphics driver, or Mesa (apt install libgl1 libgl1-mesa-dri)" : "install the graphics driver of this machine's maker";

    /// <summary>What people call it here.</summary>
    public static string Product { get; } = OperatingSystem.IsLinux() ? "libglfw3" : "GLFW";

    /// <summary>What a user can do about a display that is not found.</summary>
    public static string WhereDisplaysAreNamed { get; } = OperatingSystem.IsLinux() ? ", or set DISPLAY to one (DISPLAY=:0)" : "";

    /// <summary>Loads a library by its name; 0 when there is none.</summary>
    public static nint TryLoad(string name) =>
        NativeLibrary.TryLoad(name, typeof(GlfwLibrary).Assembly, DllImportSearchPath.AssemblyDirectory | DllImportSearchPath.SafeDirectories, out var handle) ? handle : 0;
}
