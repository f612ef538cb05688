using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Opens files that a user named; what is wrong is said in words.</summary>
internal static class UserFiles
{
    /// <summary>More than any drill, lane or mapping needs; the readers have limits of their own below this.</summary>
    private const long LargestWhole = 64L << 20;

    /// <summary>The whole file. What it says of its length is not relied on: pipes and devices say 0.</summary>
    public static byte[] ReadAllBytes(string file) => Try(file, () =>
    {
        using var stream = OpenRead(file);
        using var bytes = new MemoryStream();
        var piece = new byte[1 << 16];
        while (stream.Read(piece) is > 0 and var read)
        {
            bytes.Write(piece, 0, read);
            if (bytes.Length > LargestWhole)
            {
                throw new UserException($"{file}: more than {LargestWhole >> 20} MiB, which no file of this sort needs");
            }
        }

        return bytes.ToArray();
    });

    public static FileStream OpenRead(string file) => Try(file, () =>
        new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16, FileOptions.SequentialScan));

    public static FileStream Create(string file) => Try(file, () => new FileStream(file, FileMode.Create, FileAccess.Write));

    public static void WriteAllText(string file, string text) => Try(file, () =>
    {
        File.WriteAllText(file, text);
        return true;
    });

    public static void WriteAllBytes(string file, byte[] bytes) => Try(file, () =>
    {
        File.WriteAllBytes(file, bytes);
        return true;
    });

    public static void CreateFolder(string folder) => Try(folder, () => Directory.CreateDirectory(folder));

    private static T Try<T>(string file, Func<T> open)
    {
        try
        {
            return open();
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new UserException(Directory.Exists(file) ? $"{file}: is a folder; name a file" : $"{file}: no such file");
        }
        catch (UnauthorizedAccessException)
        {
            throw new UserException(Directory.Exists(file) ? $"{file}: is a folder; name a file" : $"{file}: cannot be opened: check its permissions");
        }
        catch (IOException exception)
        {
            throw new UserException($"{file}: {exception.Message}", ExitCodes.Failed);
        }
    }
}
