namespace AimTrainer.Faults.Tests;

/// <summary>What tests/soak asks for: more of everything, and a line of figures from each.</summary>
internal static class Figures
{
    /// <summary>How many times something is done: few in tests/run, many when tests/soak says so.</summary>
    public static int Count(string name, int usually) =>
        int.TryParse(Environment.GetEnvironmentVariable($"AIMTRAINER_{name}"), out var count) ? count : usually;

    /// <summary>Says a line of figures, also in the file that tests/soak prints at its end.</summary>
    public static void Say(string line)
    {
        TestContext.Current.TestOutputHelper?.WriteLine(line);
        if (Environment.GetEnvironmentVariable("AIMTRAINER_FIGURES") is { Length: > 0 } file)
        {
            File.AppendAllText(file, line + "\n");
        }
    }
}
