using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Reads a program from JSON. The format is told in <c>docs/trends.md</c>.</summary>
public static class PracticePlanReader
{
    private const int Format = 1;
    private const string DayAllowed = "a day written as 2026-09-01";

    /// <summary>Reads a program, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<PracticePlan> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var plan = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Plan(reader) : null;
        return new FileRead<PracticePlan>(file.HasProblems ? null : plan, file.Problems);
    }

    private static PracticePlan? Plan(ObjectReader plan)
    {
        plan.OptionalText("$schema", 500);
        plan.Whole("format", Format, Format);
        var starts = Day(plan, "starts");
        var weeks = plan.Whole("weeks", 1, PracticePlan.MostWeeks);
        var sessions = plan.Whole("sessionsAWeek", 1, PracticePlan.MostSessionsAWeek);
        var goal = plan.OptionalNumber("goalSpreadBoards", PracticePlan.SmallestGoal, PracticePlan.LargestGoal);
        var feet = plan.OptionalNumber("goalFeet", 0, LaneProfile.HeadPin.Value);
        plan.Done();
        return starts is { } day && weeks is { } count && sessions is { } aWeek
            ? new PracticePlan { Starts = day, Weeks = (int)count, SessionsAWeek = (int)aWeek, GoalSpreadBoards = goal, GoalFeet = feet }
            : null;
    }

    private static DateOnly? Day(ObjectReader plan, string name)
    {
        if (plan.Text(name, 10) is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        plan.Report(name, FoundText.Quoted(text), DayAllowed);
        return null;
    }
}
