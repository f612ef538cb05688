namespace AimTrainer.Chain.Tests;

/// <summary>What a run measured: into the log, and into the file that <c>tests/soak</c> names.</summary>
internal static class Figures
{
    public static void Say(string line)
    {
        TestContext.Current.SendDiagnosticMessage(line);
        if (Environment.GetEnvironmentVariable("AIMTRAINER_FIGURES") is { Length: > 0 } file)
        {
            File.AppendAllText(file, line + "\n");
        }
    }
}
