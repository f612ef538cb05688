using System.Diagnostics;

namespace AimTrainer.Store.Tests;

/// <summary>A small disk of its own in memory, for tests of what happens when it is full or read-only. Needs root on Linux.</summary>
internal sealed class TinyDisk : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private TinyDisk()
    {
    }

    public string Path => _folder.Path;

    /// <summary>Makes one, or skips the test where that is not allowed.</summary>
    public static TinyDisk OrSkip(string size)
    {
        var disk = new TinyDisk();
        if (!OperatingSystem.IsLinux() || !Run("mount", "-t", "tmpfs", "-o", $"size={size}", "tmpfs", disk.Path))
        {
            disk._folder.Dispose();
            Assert.Skip("may not mount a disk here (needs root on Linux)");
        }

        return disk;
    }

    public void ReadOnly(bool readOnly) =>
        Assert.True(Run("mount", "-o", readOnly ? "remount,ro" : "remount,rw", Path), "could not remount");

    /// <summary>Fills it to the last byte.</summary>
    /// <returns>The file to take away to make room again.</returns>
    public string Fill()
    {
        var ballast = System.IO.Path.Combine(Path, "ballast");
        using var stream = new FileStream(ballast, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        var block = new byte[4096];
        try
        {
            while (true)
            {
                stream.Write(block);
            }
        }
        catch (IOException)
        {
            return ballast;
        }
    }

    public void Dispose()
    {
        Run("umount", Path);
        _folder.Dispose();
    }

    private static bool Run(string command, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(command, arguments) { RedirectStandardError = true })!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
