using System.Text.Json;
using Json.Schema;

namespace AimTrainer.Domain.Tests;

/// <summary>Every file of <c>drills/programs</c>, so that people add programs without code and hear at once when one is wrong.</summary>
public sealed class ShippedProgramTests
{
    private static readonly string[] Ids =
        ["ball-comparison-clinic", "beginner-accuracy", "juniors", "league-player", "one-board-challenge", "return-with-care"];

    public static IEnumerable<TheoryDataRow<string>> Names() => Files().Select(name => new TheoryDataRow<string>(name));

    [Fact]
    public void Programs_Shipped_AreThoseOfTheDocs() => Assert.Equal(Ids, Files());

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_ShippedProgram_HasNoProblemAndItsFilesName(string name)
    {
        var read = Read(name);

        Assert.Empty(read.Problems);
        Assert.Equal(name, read.Value!.Id);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Schema_ShippedProgram_IsValid(string name)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(PathOf(name)));

        Assert.True(Schema().Evaluate(document.RootElement).IsValid);
    }

    [Theory]
    [InlineData("\"format\": 1", "\"format\": 2")]
    [InlineData("\"minors\": \"no\"", "\"minors\": \"perhaps\"")]
    [InlineData("\"withinDays\": 7", "\"withinDays\": 7, \"afterwards\": 1")]
    [InlineData("\"heldShare\": 0.25", "\"heldShare\": 25")]
    public void SchemaAndReader_SpoiltProgram_BothRefuseIt(string from, string to)
    {
        var text = File.ReadAllText(PathOf("beginner-accuracy")).Replace(from, to, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(text);

        Assert.False(Schema().Evaluate(document.RootElement).IsValid);
        Assert.NotEmpty(ProgramReader.Read("spoilt", System.Text.Encoding.UTF8.GetBytes(text), Drill).Problems);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Docs_ShippedProgram_ListItWithItsPurpose(string name)
    {
        var program = Read(name).Value!;

        Assert.Contains(
            $"| `{program.Id}` | {program.Name} | {program.Purpose} | {program.Weeks.Count} |", File.ReadAllText(TestFiles.Doc("programs.md")), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Cautions_ShippedProgram_KeepPeopleBehindTheFoulLineAndStopWhenItHurts(string name)
    {
        var cautions = Read(name).Value!.Cautions;

        Assert.Contains(cautions, caution => caution.Contains("Nobody walks past the foul line", StringComparison.Ordinal));
        Assert.Contains(cautions, caution => caution.Contains("stop, and ask a doctor or physiotherapist", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Tests_ShippedProgram_FirstSessionsMeasureAndTheLastIsARetentionTest(string name)
    {
        var program = Read(name).Value!;
        var sessions = program.Sessions.ToList();

        Assert.True(sessions[^1].Session.IsRetentionTest);
        Assert.Contains(sessions[..^1], planned => planned.Session.Drills.AsEnumerable().Any(drill => Drill(drill.DrillId)!.Blocks[0].Kind == BlockKind.Test));
        Assert.Contains(sessions, planned => planned.Session.Drills.AsEnumerable().Any(drill => drill.Goals.Count == program.Levels.Count));
    }

    [Fact]
    public void ReturnFromABreak_AsksHowTheArmFeelsAndPrescribesNoLoad()
    {
        var program = Read("return-with-care").Value!;

        Assert.True(program.AsksHowArmFeels);
        Assert.Contains(program.Cautions, caution => caution.Contains("prescribes no load", StringComparison.Ordinal));
        Assert.True(Read("juniors").Value!.Joining is { Minors: MinorsRule.Only });
    }

    internal static DrillScript? Drill(string id) =>
        TestFiles.ShippedDrills().Contains(id) ? DrillReader.Read(id, File.ReadAllBytes(TestFiles.Drill(id))).Value : null;

    private static JsonSchema Schema() => JsonSchema.FromText(File.ReadAllText(PathOf("program.schema")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    private static List<string> Files() =>
        [.. Directory.GetFiles(Path.GetDirectoryName(PathOf("x"))!, "*.json").Select(path => Path.GetFileNameWithoutExtension(path))
            .Where(name => name != "program.schema").Order(StringComparer.Ordinal)];

    private static string PathOf(string name) => TestFiles.Drill(Path.Combine("programs", name));

    private static FileRead<ProgramScript> Read(string name) => ProgramReader.Read(name, File.ReadAllBytes(PathOf(name)), Drill);
}
