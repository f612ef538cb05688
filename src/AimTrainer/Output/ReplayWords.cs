using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>How a replay or an import went, for people.</summary>
internal static class ReplayWords
{
    /// <summary>Says on the error output what was left out or left over.</summary>
    public static void Say(this ReplayOutcome outcome, UserConsole console, int problems, string file)
    {
        if (!outcome.Complete)
        {
            console.Error.WriteLine($"{file}: the shots ran out before the drill did, after {Words.Count(outcome.Shots, "shot")}");
        }

        if (outcome.AfterTheEnd > 0)
        {
            console.Error.WriteLine($"{file}: the drill was over before the file was: {Words.Count(outcome.AfterTheEnd, "shot")} left over, not graded");
        }

        if (outcome.Repeated > 0)
        {
            console.Error.WriteLine($"{file}: {Words.Count(outcome.Repeated, "shot")} came twice, taken once");
        }

        if (problems > 0)
        {
            console.Error.WriteLine($"{file}: {Words.Count(problems, "problem")}, see above");
        }
    }
}
