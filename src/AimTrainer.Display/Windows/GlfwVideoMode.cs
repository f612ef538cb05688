using System.Runtime.InteropServices;

namespace AimTrainer.Display;

/// <summary>GLFWvidmode as it lies in memory.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly record struct GlfwVideoMode(int Width, int Height, int RedBits, int GreenBits, int BlueBits, int RefreshRate);
