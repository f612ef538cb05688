using System.CommandLine;
using AimTrainer.Analysis;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>A program of weeks, given as a file or as options; it is kept nowhere.</summary>
internal sealed class TrendPlanOptions
{
    private readonly Option<string?> _file = new("--program") { Description = "A program file (docs/trends.md) to hold the record against.", HelpName = "FILE" };

    private readonly Option<DateOnly?> _starts = TrendCommand.Day("--starts", "Or the program by options: its first day (UTC).");

    private readonly Option<double?> _weeks = CommonOptions.Number("--weeks", "Its weeks.", 1, PracticePlan.MostWeeks, "N");

    private readonly Option<double?> _sessions = CommonOptions.Number("--sessions-a-week", "Its planned sessions a week.", 1, PracticePlan.MostSessionsAWeek, "N");

    private readonly Option<double?> _goal = CommonOptions.Number(
        "--goal", "The spread to reach (standard deviation), boards.", PracticePlan.SmallestGoal, PracticePlan.LargestGoal, "BOARDS");

    private readonly Option<double?> _feet = CommonOptions.Number("--goal-feet", "Where the goal is measured, feet; without it at the arrows.", 0, 60, "FEET");

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_file, _starts, _weeks, _sessions, _goal, _feet])
        {
            command.Options.Add(option);
        }
    }

    public bool AnyGiven(ParseResult parsed) => parsed.GetValue(_file) is not null || AnyPartGiven(parsed);

    /// <summary>The program, or null when none was given.</summary>
    public PracticePlan? Read(ParseResult parsed)
    {
        if (parsed.GetValue(_file) is { } file)
        {
            if (AnyPartGiven(parsed))
            {
                throw new UserException("--program: a file, or --starts, --weeks, --sessions-a-week and --goal, not both");
            }

            var read = PracticePlanReader.Read(file, UserFiles.ReadAllBytes(file));
            return read.Value ?? throw UserException.Of(read.Problems);
        }

        if (!AnyPartGiven(parsed))
        {
            return null;
        }

        if (parsed.GetValue(_starts) is not { } starts || parsed.GetValue(_weeks) is not { } weeks || parsed.GetValue(_sessions) is not { } sessions
            || weeks % 1 != 0 || sessions % 1 != 0)
        {
            throw new UserException("a program needs --starts (a day), --weeks and --sessions-a-week (whole numbers); --goal and --goal-feet may be left out");
        }

        return new PracticePlan
        {
            Starts = starts,
            Weeks = (int)weeks,
            SessionsAWeek = (int)sessions,
            GoalSpreadBoards = parsed.GetValue(_goal),
            GoalFeet = parsed.GetValue(_feet),
        };
    }

    private bool AnyPartGiven(ParseResult parsed) =>
        parsed.GetValue(_starts) is not null || parsed.GetValue(_weeks) is not null || parsed.GetValue(_sessions) is not null
        || parsed.GetValue(_goal) is not null || parsed.GetValue(_feet) is not null;
}
