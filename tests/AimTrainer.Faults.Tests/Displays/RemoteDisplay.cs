using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace AimTrainer.Faults.Tests;

/// <summary>A display process that follows a host, or a folder, and writes every frame it would have shown into a file.</summary>
internal sealed class RemoteDisplay : IDisposable
{
    private readonly RunningProgram _program;
    private readonly List<string> _files = [];

    public RemoteDisplay(string kind, string server, string tokenFile, string folder, string data)
    {
        Folder = folder;
        _program = TheProgram.Start(
            [], "display", kind, "--server", server, "--station", "7", "--token-file", tokenFile, "--out", folder, "--size", "640x360", "--data", data);
    }

    /// <summary>One that follows the data folder of a host of this machine, station 1.</summary>
    public RemoteDisplay(string kind, string folder, string data)
    {
        Folder = folder;
        _program = TheProgram.Start([], "display", kind, "--out", folder, "--size", "640x360", "--data", data);
    }

    public string Folder { get; }

    /// <summary>How many frames there were so far.</summary>
    public int Count => _files.Count;

    /// <summary>The next frame's file.</summary>
    public async Task<string> NextAsync(CancellationToken cancellationToken)
    {
        _files.Add(await _program.LineAsync(line => line.EndsWith(".png", StringComparison.Ordinal), cancellationToken));
        return _files[^1];
    }

    /// <summary>The next frame that is as a test wants it, and all that came before it.</summary>
    public async Task<(byte[] Frame, IReadOnlyList<byte[]> Between)> NextAsync(Func<byte[], bool> isSo, CancellationToken cancellationToken)
    {
        var between = new List<byte[]>();
        while (true)
        {
            var frame = Pixels(await NextAsync(cancellationToken));
            if (isSo(frame))
            {
                return (frame, between);
            }

            between.Add(frame);
        }
    }

    public static bool IsBlack(byte[] pixels) => Enumerable.Range(0, pixels.Length).All(i => i % 4 == 3 || pixels[i] == 0);

    /// <summary>For looking at: <c>AIMTRAINER_KEEP_FRAMES=DIR</c>.</summary>
    public static void Keep(params RemoteDisplay[] displays)
    {
        if (Environment.GetEnvironmentVariable("AIMTRAINER_KEEP_FRAMES") is { Length: > 0 } keep)
        {
            foreach (var display in displays)
            {
                var to = Directory.CreateDirectory(Path.Combine(keep, Path.GetFileName(display.Folder)));
                foreach (var file in Directory.EnumerateFiles(display.Folder, "*.png"))
                {
                    File.Copy(file, Path.Combine(to.FullName, Path.GetFileName(file)), overwrite: true);
                }
            }
        }
    }

    public void Dispose() => _program.Dispose();

    private static byte[] Pixels(string file)
    {
        using var image = Image.Load<Rgba32>(file);
        var pixels = new byte[image.Width * image.Height * 4];
        image.ProcessPixelRows(rows =>
        {
            for (var y = 0; y < rows.Height; y++)
            {
                System.Runtime.InteropServices.MemoryMarshal.AsBytes(rows.GetRowSpan(y)).CopyTo(pixels.AsSpan(y * image.Width * 4));
            }
        });
        return pixels;
    }
}
