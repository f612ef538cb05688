namespace AimTrainer.Reports.Tests;

/// <summary>Finds the files of this repository.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "AimTrainer.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests run outside the repository");
        }

        return folder;
    }
}
