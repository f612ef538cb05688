namespace AimTrainer.Domain;

/// <summary>
/// The session itself, as arithmetic: state and input go in, state and events come out. It reads no clock and no file, so the
/// same inputs give the same events, on any machine and any day.
/// </summary>
public static class SessionCore
{
    private const string NotBegun = "the session has not begun: begin it first";

    /// <summary>Puts a drill's targets in place for one bowler on one lane.</summary>
    public static SessionOpening Open(SessionSetup setup, DrillScript drill)
    {
        var setting = new DrillSetting(setup.Hand, setup.Lane, setup.RecordedBreakpoint, setup.PatternLength);
        var blocks = new List<ResolvedBlock>();
        List<string> problems = [.. ComparedBalls.Problems(drill, setup.Balls)];
        foreach (var block in drill.Blocks)
        {
            var resolution = DrillResolver.Resolve(block, setting);
            blocks.Add(new ResolvedBlock(block, resolution.Aims, resolution.WalkPlaces));
            problems.AddRange(resolution.Problems.AsEnumerable().Select(problem => $"block \"{block.Name}\": {problem}"));
        }

        return problems.Count > 0
            ? new SessionOpening(null, problems.ToValueList())
            : new SessionOpening(new SessionState { Setup = setup, Drill = drill, Blocks = blocks.ToValueList() }, []);
    }

    /// <summary>One step.</summary>
    public static SessionStep Apply(SessionState state, SessionInput input)
    {
        var stepper = new SessionStepper(state, input.At);
        var refusal = state.Phase == SessionPhase.Ended && !IsAboutThePast(input)
            ? "the session is over: start a new one (its shots can still be voided or corrected)"
            : Follow(stepper, state, input);
        return refusal is null ? stepper.Result() : new SessionStep(state, [], refusal);
    }

    private static string? Follow(SessionStepper stepper, SessionState state, SessionInput input) => input switch
    {
        SessionInput.ShotThrown thrown => stepper.Throw(thrown.Shot),
        SessionInput.Begin => state.Phase == SessionPhase.Waiting ? stepper.Begin() : "the session has begun already: throw",
        SessionInput.Pause => state.Phase switch
        {
            SessionPhase.Throwing => stepper.Pause(),
            SessionPhase.Paused => "the session is paused already: resume it to go on",
            _ => NotBegun,
        },
        SessionInput.Resume => state.Phase switch
        {
            SessionPhase.Paused => stepper.Resume(),
            SessionPhase.Throwing => "the session is not paused: shots count already",
            _ => NotBegun,
        },
        SessionInput.End end => stepper.End(end.Why),
        SessionInput.TakeNote note => string.IsNullOrWhiteSpace(note.Text) ? "the note is empty: write something" : stepper.TakeNote(note.Text),
        SessionInput.ClockTick => state.Phase == SessionPhase.Throwing ? stepper.Tick() : null,
        _ when state.Phase == SessionPhase.Waiting => NotBegun,
        SessionInput.VoidShot voided => stepper.Void(voided.Number, voided.Reason),
        SessionInput.CorrectShot correct => stepper.Correct(correct.Number, correct.Shot),
        SessionInput.Skip skip => skip.Scope == Scope.Aim ? stepper.SkipAim() : stepper.SkipBlock(),
        SessionInput.Repeat repeat => repeat.Scope == Scope.Aim ? stepper.RepeatAim() : stepper.RepeatBlock(),
        SessionInput.ChangeTarget change => stepper.ChangeTarget(change),
        _ => throw new ArgumentException($"unknown input {input.GetType().Name}", nameof(input)),
    };

    /// <summary>The last shot of a drill can be a misreading as well as any other, so the record stays open to corrections.</summary>
    private static bool IsAboutThePast(SessionInput input) => input is SessionInput.VoidShot or SessionInput.CorrectShot or SessionInput.TakeNote;
}
