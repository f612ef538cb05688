using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Opens text.</summary>
internal static class CsvText
{
    /// <summary>Reads UTF-8 (bytes that are not come as U+FFFD), or UTF-16 with a byte order mark. The stream stays open.</summary>
    public static StreamReader Reader(Stream stream) => new(stream, Encoding.UTF8, detectEncodingFromByteOrderMarks: true, 64 * 1024, leaveOpen: true);

    /// <summary>What to say when the system cannot open or read a file.</summary>
    public static FileProblem Failed(string file, Exception exception) => exception switch
    {
        FileNotFoundException or DirectoryNotFoundException => new(file, 0, "", "no such file", "the path of a shot file"),
        UnauthorizedAccessException => new(file, 0, "", "a folder, or a file that may not be read", "a shot file that may be read"),
        _ => new(file, 0, "", $"a file that cannot be read ({exception.Message})", "a shot file that can be read"),
    };
}
