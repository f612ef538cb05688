namespace AimTrainer.Architecture.Tests;

/// <summary>The checkout that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"));

    private static string FindRoot(string folder) =>
        File.Exists(Path.Combine(folder, "AimTrainer.sln"))
            ? folder
            : FindRoot(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no AimTrainer.sln above the tests"));
}
