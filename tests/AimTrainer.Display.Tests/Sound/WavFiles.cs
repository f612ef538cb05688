using NAudio.Wave;

namespace AimTrainer.Display.Tests;

/// <summary>Reads what was written.</summary>
internal static class WavFiles
{
    /// <summary>The samples of a file, left and right by turns; it must be of the one format.</summary>
    public static float[] Read(string path)
    {
        using var reader = new WaveFileReader(path);
        Assert.Equal(SoundFormat.Shorts, reader.WaveFormat);
        var bytes = new byte[reader.Length];
        Assert.Equal(bytes.Length, reader.Read(bytes));
        return [.. Enumerable.Range(0, bytes.Length / 2).Select(i => BitConverter.ToInt16(bytes, 2 * i) / 32768f)];
    }
}
