using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Tests;

public sealed class TerminalViewTests
{
    private static readonly string LongName = string.Concat(Enumerable.Repeat("a long name ", 5)).Trim();

    [Fact]
    public void Record_EightyColumns_NoLineIsWiderAndRowsStayWhole()
    {
        var lines = Lines(width: 80, "two-point-line", thrown: 15);

        Assert.All(lines, line => Assert.True(line.Length <= 80, line));
        Assert.Equal(30, lines.Count(line => line.Contains('|', StringComparison.Ordinal) && line.TrimEnd().EndsWith(" 3", StringComparison.Ordinal)));
        Assert.Single(lines, line => line.Contains("aim at third arrow: board 15 at 15 ft, 3 boards wide", StringComparison.Ordinal));
    }

    [Fact]
    public void Live_EightyColumnsLastShotOfTheBlock_SaysSo()
    {
        var lines = Lines(width: 80, "two-point-line", thrown: 15, live: true);

        Assert.All(lines, line => Assert.True(line.Length <= 80, line));
        Assert.Contains(lines, line => line.StartsWith(" 15 |", StringComparison.Ordinal) && line.EndsWith("centre 3  15/15", StringComparison.Ordinal));
    }

    [Fact]
    public void Live_Caution_IsSaidOnce()
    {
        var lines = Lines(width: 200, "two-point-line", thrown: 1, live: true);

        Assert.Single(lines, line => line.Contains("foul line", StringComparison.Ordinal));
    }

    [Fact]
    public void Live_ControlCodesInNames_DoNotReachTheTerminal()
    {
        var lines = Lines(width: 200, "two-point-line", thrown: 1, live: true, bowler: "A\u001b[2J[bold]");

        Assert.Contains("for A [2J[bold], right hand", lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Record_LongTargetName_RowsStayWhole()
    {
        var json = $$"""
            { "format": 1, "id": "own", "name": "Own", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 1,
              "blocks": [ { "name": "b", "kind": "training",
                "aims": [ { "name": "{{LongName}}", "mark": "arrow 2", "widthBoards": 0.5 } ],
                "order": { "kind": "serial" }, "until": { "shots": 2 }, "feedback": { "when": "every", "says": "hit" } } ] }
            """;
        var drill = DrillReader.Read("own", System.Text.Encoding.UTF8.GetBytes(json)).Value!;

        var (narrow, wide) = (Lines(80, drill, 2, live: true, "A"), Lines(120, drill, 2, live: true, "A"));

        Assert.All(narrow, line => Assert.True(line.Length <= 80, line));
        Assert.Contains(narrow, line => line.StartsWith("  1 |", StringComparison.Ordinal) && line.EndsWith("centre 3  1/2", StringComparison.Ordinal));
        Assert.Contains(wide, line => line.StartsWith("  1 |", StringComparison.Ordinal) && line.Contains("centre 3  1 of 2  a long", StringComparison.Ordinal));
    }

    private static List<string> Lines(int width, string drill, int thrown, bool live = false, string bowler = "A")
    {
        var file = Path.Combine(AppContext.BaseDirectory, "drills", $"{drill}.json");
        return Lines(width, DrillReader.Read(file, File.ReadAllBytes(file)).Value!, thrown, live, bowler);
    }

    /// <summary>What is shown of a session whose every shot is on the centre.</summary>
    private static List<string> Lines(int width, DrillScript drill, int thrown, bool live, string bowler)
    {
        var setup = new SessionSetup
        {
            SessionId = "s",
            Station = 1,
            At = DateTimeOffset.UnixEpoch,
            Bowler = bowler,
            Hand = Hand.Right,
            DrillId = drill.Id,
            DrillHash = "",
            Lane = LaneProfileReader.Default,
            Seed = 1,
        };
        using var text = new StringWriter();
        var view = new TerminalView(Consoles.Plain(text, width));
        var record = new SessionRecordBuilder();
        var state = SessionCore.Open(setup, drill).State!;
        var sequence = 0;
        if (live)
        {
            view.Opened(setup, drill, SessionSnapshot.Idle(1), goesOn: false);
        }

        var step = SessionCore.Apply(state, new SessionInput.Begin(setup.At));
        for (var number = 0; ; number++)
        {
            state = step.State;
            foreach (var happened in step.Events)
            {
                record.Add(happened);
            }

            if (live)
            {
                view.Kept(new LogEntry(++sequence, new SessionInput.Begin(setup.At), step.Events), SessionSnapshot.Idle(1) with { Throws = state.Phase == SessionPhase.Ended ? 0 : number });
            }

            if (number == thrown)
            {
                break;
            }

            var reading = new ShotReading();
            foreach (var target in step.Events.AsEnumerable().OfType<SessionEvent.AimShown>().Last().Aim.Targets)
            {
                reading.AddCrossing(target.Target.Distance.Value, target.Target.Centre.Boards);
            }

            step = SessionCore.Apply(state, new SessionInput.ShotThrown(setup.At, reading.Check(out _)!));
        }

        if (!live)
        {
            view.Record(setup, drill, record.Result(), "a test");
        }

        return [.. text.ToString().ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd())];
    }
}
