using System.Text;

namespace AimTrainer.Domain.Tests;

public sealed class ProgramReaderTests
{
    private const string Good = """
        { "format": 1, "id": "own", "name": "Own", "purpose": "A test.", "whoFor": "Tests.",
          "joining": { "who": "Anybody.", "minors": "yes", "most": 2 }, "makeUp": { "withinDays": 7, "most": 1 },
          "levels": [ { "name": "new", "about": "New." } ],
          "weeks": [ { "name": "One", "sessions": [ { "name": "First", "retentionTest": true, "drills": [
            { "drill": "ten-shot-spread", "goals": [ { "level": "new", "heldShare": 0.4 } ] } ] } ] } ] }
        """;

    [Fact]
    public void Read_GoodProgram_HasWhatItSays()
    {
        var program = Read(Good).Value!;

        var (week, session) = Assert.Single(program.Sessions);
        Assert.Equal((1, "First", true), (week, session.Name, session.IsRetentionTest));
        Assert.Equal([new LevelGoal("new", 0.4)], session.Drills[0].Goals);
        Assert.Equal(new ProgramJoining("Anybody.", MinorsRule.Yes, 2), program.Joining);
        Assert.Equal(new ProgramMakeUp(7, 1), program.MakeUp);
    }

    [Theory]
    [InlineData("ten-shot-spread", "no-such", "own:5: $.weeks[0].sessions[0].drills[0].drill: found \"no-such\"; allowed: the id of a drill")]
    [InlineData("ten-shot-spread", "stairs", "found \"stairs\", whose first block trains")]
    [InlineData("ten-shot-spread", "stairs", "$.weeks[0].sessions[0].drills[0].goals: found goals for \"stairs\", which has no test block")]
    [InlineData("\"level\": \"new\"", "\"level\": \"old\"", "goals[0].level: found \"old\"; allowed: \"new\"")]
    [InlineData("\"heldShare\": 0.4", "\"heldShare\": 1", "heldShare: found 1; allowed: a number, 0.05 to 0.95")]
    [InlineData("\"id\": \"own\"", "\"id\": \"Own\"", "$.id: found \"Own\"; allowed: lower-case letters")]
    [InlineData("\"withinDays\": 7", "\"withinDays\": -1", "$.makeUp.withinDays: found -1")]
    [InlineData("\"minors\": \"yes\"", "\"minors\": \"some\"", "$.joining.minors: found \"some\"; allowed: \"no\", \"yes\", \"only\"")]
    [InlineData("\"weeks\"", "\"month\"", "$.month: found unknown key")]
    public void Read_BadProgram_SaysWhereAndWhatIsAllowed(string from, string to, string said)
    {
        var read = Read(Good.Replace(from, to, StringComparison.Ordinal));

        Assert.Null(read.Value);
        Assert.Contains(read.Problems, problem => problem.ToString().Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void WhyNot_FullOrUnderAge_SaysWhatIsInTheWay()
    {
        var joining = new ProgramJoining("Anybody.", MinorsRule.Yes, 2);

        Assert.Null(joining.WhyNot(isMinor: true, hasGuardian: true, joined: 1));
        Assert.Contains("full", joining.WhyNot(false, false, 2), StringComparison.Ordinal);
        Assert.Contains("guardian", joining.WhyNot(true, false, 0), StringComparison.Ordinal);
        Assert.Contains("adults", (joining with { Minors = MinorsRule.No }).WhyNot(true, true, 0), StringComparison.Ordinal);
        Assert.Contains("minors", (joining with { Minors = MinorsRule.Only }).WhyNot(false, false, 0), StringComparison.Ordinal);
    }

    private static FileRead<ProgramScript> Read(string json) => ProgramReader.Read("own", Encoding.UTF8.GetBytes(json), ShippedProgramTests.Drill);
}
