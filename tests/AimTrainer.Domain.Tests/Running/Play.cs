using System.Text;

namespace AimTrainer.Domain.Tests;

/// <summary>A session in a test: a drill from JSON, and inputs half a minute apart.</summary>
internal sealed class Play
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 18, 0, 0, TimeSpan.Zero);

    private static readonly TimeSpan BetweenInputs = TimeSpan.FromSeconds(30);

    private Play(SessionState state) => State = state;

    public SessionState State { get; private set; }

    public DateTimeOffset Now { get; private set; } = Start;

    /// <summary>Everything that happened so far.</summary>
    public List<SessionEvent> Events { get; } = [];

    /// <summary>Every input that was followed.</summary>
    public List<SessionInput> Inputs { get; } = [];

    public Aim Shown => State.Shown!;

    public IEnumerable<GradedShot> Graded => Events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.Shot);

    public IEnumerable<Told> Told => Events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.Told);

    public static SessionSetup Setup { get; } = new()
    {
        SessionId = "session-1",
        Station = 1,
        At = Start,
        Bowler = "Bowler A",
        Hand = Hand.Right,
        DrillId = "drill",
        DrillHash = "none",
        Lane = SampleLane.Usual,
        Seed = 7,
    };

    /// <summary>A block: "name", "kind" training unless said otherwise, and what is given.</summary>
    public static string Block(string aims, string rest, string name = "block") =>
        $$"""{ "name": "{{name}}", "kind": "training", "aims": [{{aims}}], {{rest}} }""";

    /// <summary>One target of 3 boards around board 10 at 15 ft, in the order "serial".</summary>
    public static string OneTarget(string rest, string name = "block") =>
        Block("""{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 }""", """ "order": { "kind": "serial" }, """ + rest, name);

    public static DrillScript Drill(params string[] blocks)
    {
        var json = $$"""
            { "format": 1, "id": "drill", "name": "Drill", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 5, "blocks": [{{string.Join(", ", blocks)}}] }
            """;
        var read = DrillReader.Read("test", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Value!;
    }

    public static Play Waiting(DrillScript drill, SessionSetup? setup = null)
    {
        var opening = SessionCore.Open(setup ?? Setup, drill);
        Assert.Empty(opening.Problems);
        return new Play(opening.State!);
    }

    public static Play Begun(params string[] blocks) => Begun(Drill(blocks));

    public static Play Begun(DrillScript drill, SessionSetup? setup = null)
    {
        var play = Waiting(drill, setup);
        play.Do(new SessionInput.Begin(play.Now));
        return play;
    }

    public ValueList<SessionEvent> Do(Func<DateTimeOffset, SessionInput> input)
    {
        Now += BetweenInputs;
        return Do(input(Now));
    }

    public ValueList<SessionEvent> Do(SessionInput input)
    {
        var step = SessionCore.Apply(State, input);
        Assert.Null(step.Refusal);
        State = step.State;
        Events.AddRange(step.Events);
        Inputs.Add(input);
        return step.Events;
    }

    /// <summary>Why an input is refused; nothing happens and the state stays the very same.</summary>
    public string Refusal(Func<DateTimeOffset, SessionInput> input)
    {
        var step = SessionCore.Apply(State, input(Now));
        Assert.NotNull(step.Refusal);
        Assert.Empty(step.Events);
        Assert.Same(State, step.State);
        return step.Refusal;
    }

    public void Wait(TimeSpan time) => Now += time;

    public ValueList<SessionEvent> Throw(Shot shot) => Do(at => new SessionInput.ShotThrown(at, shot));

    /// <summary>A shot that crosses every shown target this far inside of its centre; null is not measured.</summary>
    public GradedShot Throw(params double?[] misses) => Throw(ShotAt(Shown, misses)).OfType<SessionEvent.ShotGraded>().Single().Shot;

    public void ThrowMany(int times, double? miss)
    {
        for (var i = 0; i < times; i++)
        {
            Throw(miss);
        }
    }

    public static Shot ShotAt(Aim aim, params double?[] misses)
    {
        var crossings = new List<(double Feet, double Board)>();
        for (var i = 0; i < aim.Targets.Count; i++)
        {
            if (misses[Math.Min(i, misses.Length - 1)] is { } miss)
            {
                crossings.Add((aim.Targets[i].Target.Distance.Value, aim.Targets[i].Target.Centre.Boards + miss));
            }
        }

        return SampleShot.Of([.. crossings]);
    }

    public void Pause() => Do(at => new SessionInput.Pause(at));

    public void Resume() => Do(at => new SessionInput.Resume(at));

    public void Tick() => Do(at => new SessionInput.ClockTick(at));

    public ValueList<SessionEvent> Skip(Scope scope) => Do(at => new SessionInput.Skip(at, scope));

    public ValueList<SessionEvent> Repeat(Scope scope) => Do(at => new SessionInput.Repeat(at, scope));

    public ValueList<SessionEvent> Void(int number) => Do(at => new SessionInput.VoidShot(at, number, "foul"));

    public ValueList<SessionEvent> Correct(int number, Shot shot) => Do(at => new SessionInput.CorrectShot(at, number, shot));

    public ValueList<SessionEvent> Change(string target, double? width = null, double? centre = null, double? feet = null) =>
        Do(Changing(target, width, centre, feet));

    public static Func<DateTimeOffset, SessionInput> Changing(string target, double? width = null, double? centre = null, double? feet = null) =>
        at => new SessionInput.ChangeTarget(
            at,
            target,
            width is { } boards ? BoardOffset.FromBoards(boards) : null,
            centre is { } board ? Board.FromBoards(board) : null,
            feet is { } distance ? Feet.FromFeet(distance) : null);

    public BlockEndReason? EndOf(int run) => Events.OfType<SessionEvent.BlockEnded>().SingleOrDefault(ended => ended.Run == run)?.Why;

    public SessionEvent.BlockEnded Ended => Events.OfType<SessionEvent.BlockEnded>().Last();
}
