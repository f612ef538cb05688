using System.Text;

namespace AimTrainer.Analysis.Tests;

public sealed class PracticePlanReaderTests
{
    [Fact]
    public void Read_WholeProgram_IsRead()
    {
        var read = Read("""{ "format": 1, "starts": "2026-09-01", "weeks": 8, "sessionsAWeek": 2, "goalSpreadBoards": 1.2, "goalFeet": 40 }""");
        Assert.Empty(read.Problems);
        Assert.Equal(new PracticePlan { Starts = new DateOnly(2026, 9, 1), Weeks = 8, SessionsAWeek = 2, GoalSpreadBoards = 1.2, GoalFeet = 40 }, read.Value);
    }

    [Theory]
    [InlineData("""{ "format": 1, "starts": "1.9.2026", "weeks": 8, "sessionsAWeek": 2 }""", "plan.json:1: $.starts: found \"1.9.2026\"; allowed: a day written as 2026-09-01")]
    [InlineData("""{ "format": 1, "starts": "2026-09-01", "weeks": 0, "sessionsAWeek": 2 }""", "plan.json:1: $.weeks: found 0; allowed: a whole number, 1 to 104")]
    [InlineData("""{ "format": 1, "starts": "2026-09-01", "weeks": 8, "sessionsAWeek": 15 }""", "plan.json:1: $.sessionsAWeek: found 15; allowed: a whole number, 1 to 14")]
    [InlineData("""{ "format": 1, "starts": "2026-09-01", "weeks": 8, "sessionsAWeek": 2, "goal": 1 }""", "found unknown key \"goal\"")]
    [InlineData("[]", "allowed: an object between { and }")]
    public void Read_WrongProgram_SaysWhereAndWhat(string json, string words)
    {
        var read = Read(json);
        Assert.Null(read.Value);
        Assert.Contains(words, Assert.Single(read.Problems).ToString(), StringComparison.Ordinal);
    }

    private static Domain.FileRead<PracticePlan> Read(string json) => PracticePlanReader.Read("plan.json", Encoding.UTF8.GetBytes(json));
}
