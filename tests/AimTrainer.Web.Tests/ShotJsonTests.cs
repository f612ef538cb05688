using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web.Tests;

public sealed class ShotJsonTests
{
    [Fact]
    public void Read_EveryName_LandsInTheShot()
    {
        var read = Read("""
            {"id":"a1","time":"2026-03-01T18:05:09+01:00","bowler":"Ann","hand":"left","crossings":[{"feet":15,"board":12.5}],
             "laydownBoard":18,"breakpointBoard":8,"breakpointFeet":42,"entryBoard":17,"entryAngleDeg":5,"launchAngleDeg":2,
             "speedMph":17.2,"speedAt":"release","revsRpm":300,"axisRotationDeg":45,"axisTiltDeg":15,"pins":9,"ball":"plain","note":"late"}
            """);
        Assert.Empty(read.Problems);
        var shot = read.Value!.Shot;
        Assert.Equal(("a1", "Ann", Hand.Left), (shot.Id, read.Value.Bowler, read.Value.Hand));
        Assert.Equal(12.5, Assert.Single(shot.Crossings.AsEnumerable()).Board.Boards);
        Assert.Equal(18, shot.Laydown!.Value.Boards);
        Assert.Equal((17.2, SpeedPlace.Release), (shot.Speed!.Value.Value.Value, shot.Speed.Value.Place));
        Assert.Equal((9, "plain", "late"), (shot.Pins, shot.Ball, shot.Note));
    }

    [Theory]
    [InlineData("""{"crossing":[]}""", "$.crossing", "crossings (the most alike)")]
    [InlineData("""{"crossings":[{"feet":15,"board":99}]}""", "$.crossings[0].board", "-4 to 44")]
    [InlineData("""{"speedMph":170}""", "$.speedMph", "1 to 40")]
    [InlineData("""{"time":"yesterday"}""", "$.time", "ISO 8601")]
    [InlineData("""{"source":"simulated"}""", "$.source", "typed")]
    [InlineData("""[1]""", "$", "an object")]
    public void Read_Mistake_SaysWhereAndWhatIsAllowed(string json, string path, string allowed)
    {
        var problem = Assert.Single(Read(json).Problems.AsEnumerable());
        Assert.Equal(path, problem.Path);
        Assert.Contains(allowed, problem.Allowed, StringComparison.Ordinal);
    }

    private static FileRead<FeedItem.ShotRead> Read(string json) =>
        ShotJson.Read("test", Encoding.UTF8.GetBytes(json), LaneProfileReader.Default, ShotSource.Sensor);
}
