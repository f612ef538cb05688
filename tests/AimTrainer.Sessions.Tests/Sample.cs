using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

/// <summary>Drills, setups and shots for tests.</summary>
internal static class Sample
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 18, 0, 0, TimeSpan.Zero);

    /// <summary>A drill of one block or more; each has one target of 3 boards around board 10 at 15 ft.</summary>
    public static DrillSource Drill(params string[] blockRests)
    {
        var blocks = blockRests.Select((rest, index) =>
            $$"""
            { "name": "block {{index + 1}}", "kind": "training", "aims": [{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }],
              "order": { "kind": "serial" }, {{rest}} }
            """);
        var json = $$"""
            { "format": 1, "id": "drill", "name": "Drill", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 5, "blocks": [{{string.Join(", ", blocks)}}] }
            """;
        var utf8 = Encoding.UTF8.GetBytes(json);
        var read = DrillReader.Read("test", utf8);
        Assert.Empty(read.Problems);
        return new DrillSource(read.Value!, DrillHash.Of(utf8), json);
    }

    public static DrillSource Shots(int shots) => Drill($$""" "until": { "shots": {{shots}} } """);

    public static SessionSetup Setup(string id = "session-1", int station = 1) => new()
    {
        SessionId = id,
        Station = station,
        At = Start,
        Bowler = "Bowler A",
        Hand = Hand.Right,
        DrillId = "drill",
        DrillHash = "none",
        Lane = LaneProfileReader.Default,
        Seed = 7,
    };

    /// <summary>A shot over this board at 15 ft.</summary>
    public static Shot Shot(double board, string? id = null, DateTimeOffset? time = null)
    {
        var reading = new ShotReading { Id = id, Time = time };
        reading.AddCrossing(15, board);
        return reading.Check(out _)!;
    }

    public static FeedItem Item(double board, string? bowler = null, Hand? hand = null, int line = 0, DateTimeOffset? time = null) =>
        new FeedItem.ShotRead(Shot(board, time: time), bowler, hand, line);
}
