using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class ReaderTests
{
    private const string Ball15 = """{ "massLb": 15, "diameterIn": 8.55, "radiusOfGyrationIn": 2.5 }""";

    private static readonly string[] _examples = [.. File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "motion.md")).Split("```json").Skip(1)
        .Select(block => block[..block.IndexOf("```", StringComparison.Ordinal)])];

    [Fact]
    public void Read_ExamplesOfTheDocs_AreGood()
    {
        Assert.Equal(5, _examples.Length);
        Assert.Equal(
            new Release(Hand.Right, 22, 2.6, 8, 350) { AxisRotationDegrees = 45, AxisTiltDegrees = 12 },
            ReleaseReader.Read("docs", Utf8(_examples[0])).Value!.Release);
        Assert.Equal(Ball.Usual, BallReader.Read("docs", Utf8(_examples[1])).Value);
        var rows = _examples[2]
            .Replace("""6, 6, "39 numbers" """.TrimEnd(), Numbers(6), StringComparison.Ordinal)
            .Replace("""0, 0, "39 zeros" """.TrimEnd(), Numbers(0), StringComparison.Ordinal);
        Assert.Equal(40, LaneSurfaceReader.Read("docs", Utf8(rows)).Value!.Surface.PatternFeet);
        var passes = LaneSurfaceReader.Read("docs", Utf8(_examples[3])).Value!;
        Assert.Equal(new Wear(0.01, 1.5), passes.Wear);
        Assert.Equal(46, passes.Surface.OilAt(0, 20));
        Assert.Equal(0.2, LaneSurfaceReader.Read("docs", Utf8(_examples[4])).Value!.Surface.FrictionAt(30, 20));
    }

    [Fact]
    public void Read_OtherUnits_AreTheSameBallAndRelease()
    {
        var metric = BallReader.Read("x", Utf8("""{ "massKg": 6.80388555, "radiusM": 0.108585, "radiusOfGyrationIn": 2.5, "grip": 1 }""")).Value!;
        var pounds = BallReader.Read("x", Utf8(Ball15)).Value!;
        Assert.Equal((pounds.RadiusMetres, pounds.RadiusOfGyrationMetres), (metric.RadiusMetres, metric.RadiusOfGyrationMetres));
        Assert.Equal(pounds.MassKilograms, metric.MassKilograms, 1e-12);

        // Source: 1 mph is 0.44704 m/s exactly (international foot and mile).
        var release = ReleaseReader.Read("x", Utf8("""{ "hand": "left", "laydownBoard": 20, "launchAngleDeg": 0, "speedMph": 20, "revsRpm": 0, "axisRotationDeg": 0 }"""));
        Assert.Equal(8.9408, release.Value!.Release.SpeedMetresPerSecond, 1e-12);
        Assert.Equal(20, release.Value.Release.SpeedMph, 1e-12);
    }

    [Theory]
    [InlineData("15", "1", "$.massLb: found 1; allowed: a number, 5.6 to 16.5")]
    [InlineData("8.55", "12", "$.diameterIn: found 12; allowed: a number, 7.9 to 9.05")]
    [InlineData("2.5", "1", "$.radiusOfGyrationIn: found 1; allowed: a number, 2.2 to 2.9")]
    [InlineData("\"diameterIn\": 8.55, ", "", "found none of radiusM, diameterIn; allowed: exactly one of them")]
    [InlineData("{ ", "{ \"grip\": 9, ", "$.grip: found 9; allowed: a number, 0.2 to 3")]
    public void Read_BadBall_IsRefusedWithPlaceAndRange(string good, string bad, string message)
    {
        var read = BallReader.Read("ball.json", Utf8(Ball15.Replace(good, bad, StringComparison.Ordinal)));
        Assert.Null(read.Value);
        Assert.Contains(message, Assert.Single(read.Problems.AsEnumerable()).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_EveryReleaseThatIsRead_HasAPath()
    {
        foreach (var speed in (string[])["\"speedMps\": 2", "\"speedMps\": 16", "\"speedMph\": 4.5", "\"speedMph\": 35.5"])
        {
            var read = ReleaseReader.Read("x", Utf8($$"""{ "hand": "left", "laydownBoard": 20, "launchAngleDeg": 10, {{speed}}, "revsRpm": 1000, "axisRotationDeg": -90 }"""));
            Assert.Null(read.Value!.Release.Problem());
            Assert.True(double.IsFinite(Paths.Trace(InventedLane.House(), Ball.Usual, read.Value.Release).End.EndSeconds));
        }
    }

    [Fact]
    public void Read_EveryBallThatIsRead_HasAPath()
    {
        foreach (var (mass, size) in ((string, string)[])[("5.6", "7.9"), ("16.5", "9.05")])
        {
            var ball = BallReader.Read("x", Utf8($$"""{ "massLb": {{mass}}, "diameterIn": {{size}}, "radiusOfGyrationIn": 2.9 }""")).Value!;
            Assert.Null(ball.Problem());
        }
    }

    private static string Numbers(int value) => string.Join(", ", Enumerable.Repeat(value, 39));

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
