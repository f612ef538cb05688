using System.Buffers.Binary;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace AimTrainer.Display.Tests;

/// <summary>An X server of the test's own (Xvfb) whose screen is a file, with its display set for this process's native code.</summary>
internal sealed partial class VirtualScreen : IDisposable
{
    private readonly Process _server;
    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-screen-").FullName;

    public VirtualScreen(params string[] more)
    {
        _server = Process.Start(new ProcessStartInfo(
            "Xvfb", ["-displayfd", "1", "-screen", "0", "1280x720x24", "-fbdir", _folder, "-nolisten", "tcp", "-noreset", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _server.ErrorDataReceived += (_, _) => { };
        _server.BeginErrorReadLine();
        Name = ":" + (_server.StandardOutput.ReadLine() ?? throw new InvalidOperationException("Xvfb did not start"));
        SetNative("DISPLAY", Name);
    }

    public string Name { get; }

    /// <summary>What native code reads; the runtime's own variables never reach it.</summary>
    public static void SetNative(string name, string? value) => _ = value is null ? UnsetEnv(name) : SetEnv(name, value, 1);

    /// <summary>Runs xrandr on this screen. It may complain although it did what it was asked (a screen without outputs has no size).</summary>
    public async Task RandrAsync(params string[] words)
    {
        using var randr = Process.Start(new ProcessStartInfo("xrandr", ["-d", Name, .. words]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        await randr.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await randr.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>The colour on the screen now, as 0xRRGGBB. Source: XWDFile.h, the format of the screen's file.</summary>
    public int ColourAt(int x, int y)
    {
        using var file = new FileStream(Path.Combine(_folder, "Xvfb_screen0"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var header = new byte[100];
        file.ReadExactly(header);
        int Word(int index) => BinaryPrimitives.ReadInt32BigEndian(header.AsSpan(index * 4));
        var (headerSize, bitsPerPixel, bytesPerLine, colours) = (Word(0), Word(11), Word(12), Word(19));
        Assert.Equal(32, bitsPerPixel);
        file.Position = headerSize + (colours * 12) + ((long)y * bytesPerLine) + (x * 4);
        var pixel = new byte[4];
        file.ReadExactly(pixel);
        return BinaryPrimitives.ReadInt32LittleEndian(pixel) & 0xFFFFFF;
    }

    public void Dispose()
    {
        SetNative("DISPLAY", null);
        _server.Kill();
        _server.WaitForExit();
        _server.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [LibraryImport("libc", EntryPoint = "setenv", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int SetEnv(string name, string value, int overwrite);

    [LibraryImport("libc", EntryPoint = "unsetenv", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int UnsetEnv(string name);
}
