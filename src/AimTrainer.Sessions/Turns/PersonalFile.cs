namespace AimTrainer.Sessions;

/// <summary>Writes a file that names people: readable by its owner alone, and whole or not at all.</summary>
public static class PersonalFile
{
    /// <summary>Puts a file in the place of the old one in one step.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">Its new content.</param>
    /// <param name="durable">Whether it is on the disk when this returns.</param>
    /// <exception cref="IOException">It cannot be written; the old one is as it was.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes, bool durable = true)
    {
        var beside = path + ".new";
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (var stream = new FileStream(beside, options))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: durable);
        }

        File.Move(beside, path, overwrite: true);
    }
}
