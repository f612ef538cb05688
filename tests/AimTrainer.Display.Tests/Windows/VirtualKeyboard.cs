using System.Runtime.InteropServices;

namespace AimTrainer.Display.Tests;

/// <summary>Hands at the keyboard of a <see cref="VirtualScreen"/>, through the X server's own test extension (XTEST).</summary>
internal sealed partial class VirtualKeyboard : IDisposable
{
    private readonly nint _display;

    /// <summary>The pointer goes to the middle of the screen: with no window manager, keys go to the window below it.</summary>
    public VirtualKeyboard(VirtualScreen screen)
    {
        _display = OpenDisplay(screen.Name);
        Assert.NotEqual(0, _display);
        Assert.NotEqual(0, FakeMotion(_display, -1, 640, 360, 0));
        Assert.NotEqual(0, Sync(_display, 0));
    }

    /// <summary>Presses keys together, the last one last, and lets them go.</summary>
    /// <param name="keys">X's names of keys (keysymdef.h): Right, Shift_L, Escape.</param>
    public void Press(params string[] keys)
    {
        var codes = Array.ConvertAll(keys, key => (uint)KeysymToKeycode(_display, StringToKeysym(key)));
        Assert.DoesNotContain(0u, codes);
        foreach (var code in codes)
        {
            Assert.NotEqual(0, FakeKey(_display, code, 1, 0));
        }

        foreach (var code in codes.Reverse())
        {
            Assert.NotEqual(0, FakeKey(_display, code, 0, 0));
        }

        Assert.NotEqual(0, Sync(_display, 0));
    }

    public void Dispose() => _ = CloseDisplay(_display);

    [LibraryImport("libX11.so.6", EntryPoint = "XOpenDisplay", StringMarshalling = StringMarshalling.Utf8)]
    private static partial nint OpenDisplay(string name);

    [LibraryImport("libX11.so.6", EntryPoint = "XCloseDisplay")]
    private static partial int CloseDisplay(nint display);

    [LibraryImport("libX11.so.6", EntryPoint = "XSync")]
    private static partial int Sync(nint display, int discard);

    [LibraryImport("libX11.so.6", EntryPoint = "XStringToKeysym", StringMarshalling = StringMarshalling.Utf8)]
    private static partial nuint StringToKeysym(string name);

    [LibraryImport("libX11.so.6", EntryPoint = "XKeysymToKeycode")]
    private static partial byte KeysymToKeycode(nint display, nuint key);

    [LibraryImport("libXtst.so.6", EntryPoint = "XTestFakeKeyEvent")]
    private static partial int FakeKey(nint display, uint code, int isDown, nuint delay);

    [LibraryImport("libXtst.so.6", EntryPoint = "XTestFakeMotionEvent")]
    private static partial int FakeMotion(nint display, int screen, int x, int y, nuint delay);
}
