using System.Diagnostics;

namespace AimTrainer.Faults.Tests;

/// <summary>
/// A disk of a few megabytes, in memory, that only this test sees: a shell holds it in a mount namespace of its own, and it is
/// gone with the shell. Linux only; fails, and says so, where the system allows no such namespace.
/// </summary>
internal sealed class SmallDisk : IAsyncDisposable
{
    private const string Done = "done";

    private readonly Process _shell;
    private readonly string _place;

    private SmallDisk(Process shell, string place, IReadOnlyList<string> inside)
    {
        _shell = shell;
        _place = place;
        Inside = inside;
    }

    /// <summary>The words to start a program with so that it sees the disk.</summary>
    public IReadOnlyList<string> Inside { get; }

    /// <summary>The data folder on it; not made yet.</summary>
    public string Data => Path.Combine(_place, "data");

    public static async Task<SmallDisk> MakeAsync(string place)
    {
        // Root needs only a mount namespace; anybody else needs to be root in a user namespace of their own as well.
        string[] asRoot = Environment.UserName == "root" ? [] : ["--user", "--map-root-user"];
        string[] enterAsRoot = asRoot.Length == 0 ? [] : ["--user", "--preserve-credentials"];
        Directory.CreateDirectory(place);
        var shell = Process.Start(new ProcessStartInfo("unshare", [.. asRoot, "--mount", "bash"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        var disk = new SmallDisk(shell, place, ["nsenter", "--target", $"{shell.Id}", .. enterAsRoot, "--mount"]);
        await disk.DoAsync($"mount -t tmpfs -o size=6m tmpfs '{place}'");
        return disk;
    }

    /// <summary>Leaves not a byte of room.</summary>
    public Task FillAsync() => DoAsync($"head -c 6M /dev/zero > '{_place}/ballast' 2> /dev/null; [ $(stat -f -c %a '{_place}') = 0 ]");

    /// <summary>Makes room again.</summary>
    public Task FreeAsync() => DoAsync($"rm '{_place}/ballast'");

    /// <summary>Allows reading only, from now on.</summary>
    public Task MakeReadOnlyAsync() => DoAsync($"mount -o remount,ro '{_place}'");

    /// <summary>Allows writing again.</summary>
    public Task MakeWritableAsync() => DoAsync($"mount -o remount,rw '{_place}'");

    public async ValueTask DisposeAsync()
    {
        _shell.StandardInput.Close();
        await _shell.WaitForExitAsync();
        _shell.Dispose();
    }

    private async Task DoAsync(string command)
    {
        await _shell.StandardInput.WriteLineAsync($"{command} && echo {Done} || echo failed");
        await _shell.StandardInput.FlushAsync();
        var answer = await _shell.StandardOutput.ReadLineAsync();
        Assert.True(answer == Done, $"this test needs a small disk of its own (unshare, nsenter, mount of a tmpfs); \"{command}\" was answered: {answer ?? "nothing"}");
    }
}
