using System.Globalization;
using System.Runtime.InteropServices;

namespace AimTrainer.Benchmarks;

/// <summary>What the figures were measured on.</summary>
internal static class Machine
{
    /// <summary>Cores, processor, system, runtime, date, and how busy it was.</summary>
    public static string Describe() => string.Create(
        CultureInfo.InvariantCulture,
        $"machine: {Environment.ProcessorCount} cores, {Processor()}, {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}, "
        + $"{DateTime.UtcNow:yyyy-MM-dd}, load {Load()}");

    /// <summary>The file system that a folder lies on.</summary>
    public static string DiskOf(string folder) => DriveInfo.GetDrives()
        .Where(drive => folder.StartsWith(drive.RootDirectory.FullName, StringComparison.Ordinal))
        .MaxBy(drive => drive.RootDirectory.FullName.Length)?.DriveFormat ?? "unknown file system";

    private static string Processor() => File.Exists("/proc/cpuinfo")
        ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))?.Split(':')[1].Trim() ?? "unknown processor"
        : RuntimeInformation.ProcessArchitecture.ToString();

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";
}
