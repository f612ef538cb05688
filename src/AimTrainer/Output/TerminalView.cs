using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>
/// A session for the person at the terminal: what to aim at, what came of each shot, and the figures at the end. A row is at most
/// 80 wide; where there is more room it also names its target.
/// </summary>
internal sealed class TerminalView : ISessionView
{
    private const int RoomForNames = 110;
    private const int RoomForOf = 84;

    private readonly IAnsiConsole _console;
    private readonly Lock _lock = new();
    private SessionSetup? _setup;
    private DrillScript? _drill;
    private Aim? _lastShown;
    private int? _shotsOfBlock;
    private int _throws;

    public TerminalView(UserConsole console) : this(Consoles.For(console))
    {
    }

    public TerminalView(IAnsiConsole console) => _console = console;

    /// <summary>Whether the aim is drawn whenever it changes: wanted where a person throws, noise where shots stream by.</summary>
    public bool SaysWhatToAimAt { get; init; }

    private bool HasRoomForNames => _console.Profile.Width >= RoomForNames;

    public void Opened(SessionSetup setup, DrillScript drill, SessionSnapshot now, bool goesOn)
    {
        (_setup, _drill) = (setup, drill);
        Heading(setup, drill, "");
        Line(Text($"{drill.Purpose} About {drill.AboutMinutes} minutes."));
        Line(Text($"Session {setup.SessionId}{(goesOn ? ", gone on with" : "")}, station {setup.Station}."));
        foreach (var caution in Cautions.Always.Concat(drill.Cautions).Distinct())
        {
            Line($"[yellow]Take care:[/] {Text(caution)}");
        }

        Legend();
        if (now is { Block: { } block, Shown: { } shown })
        {
            _shotsOfBlock = block.Until.Shots;
            _throws = now.Throws;
            Line("");
            Line(
                $"[bold]Block {now.BlockNumber} of {drill.Blocks.Count}: {Text(block.Name)}[/] ({Json.Word(block.Kind)}), "
                + $"{now.Throws}{(_shotsOfBlock is { } of ? $" of {of}" : "")} thrown");
            ShowAim(shown);
            ShowTurn(now.Turn);
        }

        if (now.Phase == SessionPhase.Paused)
        {
            Notice("paused: shots are set aside until you type resume");
        }
    }

    public void Kept(LogEntry entry, SessionSnapshot now)
    {
        lock (_lock)
        {
            foreach (var happened in entry.Events)
            {
                Show(happened);
            }

            _throws = now.Throws;
        }
    }

    public void Notice(string text) => Line($"[yellow]{Text(text)}[/]");

    public void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? recordFile)
    {
        _setup = setup;
        foreach (var block in record.Blocks)
        {
            Line("");
            SummaryOf(block);
        }

        if (record.Blocks.AsEnumerable().Any(block => block.Summary.PerTarget.Count > 0))
        {
            Line("[grey]In boards. Bias: the mean miss. Variable: the scatter around it."
                + $"{(HasRoomForNames ? " Absolute: the mean size of a miss. Total: bias and scatter together." : "")}[/]");
        }

        Line("");
        if (record.SetAside.Count > 0)
        {
            Line(Text($"{Words.Count(record.SetAside.Count, "shot")} came when none counted; kept, not graded."));
        }

        foreach (var note in record.Notes)
        {
            Line(Text($"Note: {note}"));
        }

        if (record.EndedWhy is { } why)
        {
            Line(Text($"Session over: {why}."));
        }

        if (setup.Simulated)
        {
            Line("[yellow]This was the simulated bowler: every shot is invented.[/]");
        }

        if (recordFile is not null)
        {
            Line(Text($"The record is in {recordFile}; see: aimtrainer sessions show {setup.SessionId}{DataPlace.OptionFor(recordFile)}"));
        }
    }

    /// <summary>A session that is over: who and when, every shot, the figures.</summary>
    /// <param name="setup">The session.</param>
    /// <param name="drill">Its drill.</param>
    /// <param name="record">What was thrown.</param>
    /// <param name="source">Where it comes from, in a few words.</param>
    public void Record(SessionSetup setup, DrillScript drill, SessionRecord record, string source)
    {
        (_setup, _drill) = (setup, drill);
        Heading(setup, drill, source);
        Legend();
        foreach (var block in record.Blocks)
        {
            Line("");
            Line($"[bold]{Text(block.Began.Name)}[/] ({Json.Word(block.Began.BlockKind)}{Attempt(block.Began)})");
            _lastShown = null;
            foreach (var shot in block.Shots)
            {
                ShowTargets(shot.Shot, "");
                ShowBall(shot.Shot);
                ShowComparability(shot.Shot);
                ShowLeftOut(shot.Shot, shot.NextWidths);
                if (shot.AsFirstGraded is { } before)
                {
                    Notice("     corrected by hand; as it was first:");
                    ShowTargets(before, "");
                }

                if (shot.Shot.VoidReason is { } why)
                {
                    Notice($"     does not count: {why}");
                }
            }
        }

        Summary(setup, drill, record, null);
    }

    private void Heading(SessionSetup setup, DrillScript drill, string source) => Line(
        $"[bold]{Text(drill.Name)}[/] ({Text(drill.Id)}) for {Text(setup.Bowler)}, {Words.Of(setup.Hand)} hand"
        + $"{(setup.Simulated ? ", [yellow]simulated: every shot is invented[/]" : "")}{Text(source.Length > 0 ? $"; {source}" : "")}");

    private void Legend()
    {
        Line(Text($"The lane from above, board {(_setup!.Hand == Hand.Right ? "39 on the left, 1 on the right" : "1 on the left, 39 on the right")}: = target, O held, x missed."));
        Line("Each row: shot, lane, the board it crossed (~ worked out), how far that is from the centre, grade, points.");
    }

    private void Show(SessionEvent happened)
    {
        switch (happened)
        {
            case SessionEvent.BlockBegan began:
                _lastShown = null;
                _throws = 0;
                _shotsOfBlock = _drill!.Blocks[began.Block].Until.Shots;
                Line("");
                Line($"[bold]Block {began.Block + 1} of {_drill.Blocks.Count}: {Text(began.Name)}[/] ({Json.Word(began.BlockKind)}{Attempt(began)})");
                break;
            case SessionEvent.AimShown shown when SaysWhatToAimAt:
                if (shown.Aim != _lastShown)
                {
                    ShowAim(shown.Aim);
                }

                ShowTurn(shown.Turn);
                break;
            case SessionEvent.ShotGraded graded:
                _throws++;
                ShowTargets(graded.Shot, Progress());
                ShowBall(graded.Shot);
                ShowComparability(graded.Shot);
                ShowLeftOut(graded.Shot, graded.NextWidths);
                ShowWidths(graded);
                break;
            case SessionEvent.ShotSetAside aside:
                Notice($"     set aside, not graded: {aside.Why}");
                break;
            case SessionEvent.ShotVoided voided:
                Notice($"     shot {voided.Number} does not count: {voided.Reason}");
                break;
            case SessionEvent.ShotCorrected corrected:
                Notice($"     shot {corrected.After.Number} corrected; both values are kept");
                ShowTargets(corrected.After, "");
                ShowBall(corrected.After);
                break;
            case SessionEvent.TargetChanged changed:
                Notice($"     {changed.Name} is now {Words.Target(changed.After)}");
                break;
            case SessionEvent.AimSkipped skipped:
                Notice($"     {skipped.Aim} passed over");
                break;
            case SessionEvent.AimRepeated repeated:
                Notice($"     {repeated.Aim} once more");
                break;
            case SessionEvent.BlockEnded ended:
                Line(Text($"     Block over: {Words.Ended(ended.Why)}."));
                break;
            case SessionEvent.SessionPaused:
                Notice("     paused: shots are set aside");
                break;
            case SessionEvent.SessionResumed:
                Notice("     going on");
                break;
            case SessionEvent.NoteTaken note:
                Line(Text($"     noted: {note.Text}"));
                break;
            default:
                break;
        }
    }

    private static string Attempt(SessionEvent.BlockBegan began) => began.Attempt > 1 ? $", attempt {began.Attempt}" : "";

    private string Progress()
    {
        if (_shotsOfBlock is not { } of)
        {
            return "";
        }

        var all = of.ToString(CultureInfo.InvariantCulture);
        var thrown = _throws.ToString(CultureInfo.InvariantCulture).PadLeft(all.Length);
        return _console.Profile.Width >= RoomForOf ? $"{thrown} of {all}" : $"{thrown}/{all}";
    }

    private void ShowAim(Aim aim)
    {
        _lastShown = aim;
        foreach (var target in aim.Targets)
        {
            var strip = SaysWhatToAimAt ? Strip(target.Target, null, false) : "";
            var words = Text($"aim at {target.Name}: {Words.Target(target.Target)}");
            Line(HasRoomForNames ? $"    {strip} {words}" : $"    {words}");
            if (!HasRoomForNames && SaysWhatToAimAt)
            {
                Line($"    {strip}");
            }
        }
    }

    private void ShowTargets(GradedShot shot, string progress)
    {
        if (!HasRoomForNames && !IsAtThePlacesOf(_lastShown, shot))
        {
            ShowAim(new Aim(shot.Aim, shot.Targets.AsEnumerable().Select(result => new NamedTarget(result.Name, result.Target)).ToValueList()));
        }

        for (var i = 0; i < shot.Targets.Count; i++)
        {
            var result = shot.Targets[i];
            var number = i == 0 ? shot.Number.ToString(CultureInfo.InvariantCulture) : "";
            var name = HasRoomForNames
                ? $"{(progress.Length > 0 ? (i == 0 ? progress : "").PadRight(progress.Length + 2) : "")}{result.Name}, {Words.Boards(result.Target.Width)} wide"
                : i == 0 ? progress : "";
            var row = $"{number,3} {Strip(result.Target, result.Crossing.Board, result.Grade?.Holds == true)} {Outcome(result)}";
            Line(name.Length > 0 ? $"{row}  [grey]{Text(name)}[/]" : row.TrimEnd());
        }
    }

    private string Outcome(TargetResult result)
    {
        if (result is not { Grade: { } grade, Crossing.Board: { } board, Miss: { } miss })
        {
            return $"[grey]{"not measured",-27}[/]";
        }

        var about = result.Crossing.Kind == CrossingKind.Interpolated ? "~" : "";
        return Text($"{about + Words.TwoPlaces(board.Boards),6} {Words.Miss(miss.Boards, _setup!.Hand),-11} ")
            + $"[{(grade.Holds ? "green" : "red")}]{Text($"{grade.Name,-6}")}[/] {grade.Points}";
    }

    private static bool IsAtThePlacesOf(Aim? aim, GradedShot shot) => aim is not null && aim.Targets.Count == shot.Targets.Count
        && aim.Targets.AsEnumerable().Zip(shot.Targets.AsEnumerable(), (shown, thrown) => shown.Name == thrown.Name
            && shown.Target.Centre == thrown.Target.Centre && shown.Target.Distance == thrown.Target.Distance).All(same => same);

    /// <summary>Which ball of a comparison is thrown next, and what is still wanted at this line.</summary>
    private void ShowTurn(BallTurn? turn)
    {
        if (turn is null)
        {
            return;
        }

        var wanted = turn.Balls.First(cell => cell.Role == turn.Due.Role).StillWanted;
        var who = turn.IsCheck
            ? $"[bold]Lane check: throw {Text(turn.Due.Name)}[/] to see whether the lane has moved"
            : $"[bold]Throw {Text(turn.Due.Name)}[/] ({Text(turn.Due.Role)}): {Words.Count(wanted, "more good throw")} at line {turn.Line} of {turn.Lines}";
        Line($"    {who}");
        var cells = string.Join(", ", turn.Balls.AsEnumerable().Select(cell => $"{cell.Ball} {cell.Good} of {cell.GoodWanted}"));
        Line(Text($"    Good so far: {cells}. {Cautions.DryTowel}"));
    }

    /// <summary>The ball of a comparison, a wrong one, and why a throw is none that counts for it.</summary>
    private void ShowBall(GradedShot shot)
    {
        if (shot.Compared is not { } thrown)
        {
            return;
        }

        Line(Text($"     {(thrown.IsCheck ? "lane check with " : "")}{thrown.Ball}{(thrown.IsGood ? "" : $"; no good throw: {thrown.NotGood}")}"));
        if (thrown.IsOtherThanDue)
        {
            Notice(thrown.Role is null
                ? $"     thrown with {thrown.Ball}, which is not compared: it counts for no ball; {thrown.Due} is still due"
                : $"     thrown with {thrown.Ball}, not {thrown.Due}: it counts for {thrown.Ball}; {thrown.Due} is still due");
        }
    }

    private void ShowComparability(GradedShot shot)
    {
        if (shot is { Comparability.IsComparable: false, Compared: null })
        {
            Notice($"     not the same throw: {string.Join("; ", shot.Comparability.Reasons)}");
        }
    }

    private void ShowLeftOut(GradedShot shot, ValueList<NextWidth> nextWidths)
    {
        for (var i = 0; i < nextWidths.Count; i++)
        {
            if (nextWidths[i].LeftOut)
            {
                Notice($"     {shot.Targets[i].Name}: a gross miss, left out of the width; misread or real?");
            }
        }
    }

    private void ShowWidths(SessionEvent.ShotGraded graded)
    {
        for (var i = 0; i < graded.NextWidths.Count; i++)
        {
            var (next, target) = (graded.NextWidths[i], graded.Shot.Targets[i]);
            if (next.Width != target.Target.Width)
            {
                Line(Text(
                    $"     {target.Name}: {(next.Width < target.Target.Width ? "narrower" : "wider")}, "
                    + $"{Words.Boards(next.Width)} from now on{(next.Uncertain ? " (not yet sure)" : "")}"));
            }
        }
    }

    private void SummaryOf(BlockRecord block)
    {
        var counted = block.Shots.AsEnumerable().Count(shot => shot.Shot.VoidReason is null);
        var shots = counted == 0 ? "no shots" : $"{Words.Count(counted, "shot")}, {Words.Count(block.Summary.Points, "point")}";
        Line(
            $"[bold]{Text(block.Began.Name)}[/] ({Json.Word(block.Began.BlockKind)}{Attempt(block.Began)}): {shots}"
            + $"{(block.Ended is { } over ? $"; {Text(Words.Ended(over.Why))}" : "")}");
        if (counted > 0)
        {
            Consoles.Write(_console, Figures(block));
        }

        foreach (var target in block.Summary.PerTarget.AsEnumerable().Where(target => target.Graded < target.Shots))
        {
            Line(Text($"{target.Name}: {target.Shots - target.Graded} of {Words.Count(target.Shots, "shot")} not measured; they count for nothing"));
        }

        foreach (var threshold in block.Ended?.Thresholds ?? [])
        {
            Line(Text(
                $"{threshold.Target}: hits and misses balance at {Words.Number(threshold.Threshold.Boards)} boards "
                + $"(mean of the last {threshold.Threshold.Reversals} reversals)"));
        }
    }

    private Table Figures(BlockRecord block)
    {
        // A terminal of 80 has no room for all: absolute and total error then stay in the record.
        var table = HasRoomForNames
            ? Consoles.Table(("target", ColumnKind.Words), ("held", ColumnKind.Number), ("rate (95 % limits)", ColumnKind.Number), ("bias", ColumnKind.Number), ("variable", ColumnKind.Number),
                ("from..to", ColumnKind.Number), ("absolute", ColumnKind.Number), ("total", ColumnKind.Number))
            : Consoles.Table(("target", ColumnKind.Words), ("held", ColumnKind.Number), ("rate (limits)", ColumnKind.Number), ("bias", ColumnKind.Number),
                ("variable", ColumnKind.Number), ("from..to", ColumnKind.Number));
        foreach (var target in block.Summary.PerTarget)
        {
            List<string> cells =
            [
                Clean(target.Name),
                $"{target.Hits} of {target.Graded}",
                target.HitRate is null ? "-" : $"{Words.Percent(target.HitRate)} ({Words.WholePercent(target.HitRateLow)} to {Words.WholePercent(target.HitRateHigh)})",
                target.ConstantErrorBoards is { } bias ? Words.Miss(bias, _setup!.Hand) : "-",
                Words.TwoPlaces(target.VariableErrorBoards),
                target.Graded == 0 ? "-" : $"{target.MinBoard}..{target.MaxBoard}",
            ];
            if (HasRoomForNames)
            {
                cells.AddRange([Words.TwoPlaces(target.AbsoluteErrorBoards), Words.TwoPlaces(target.TotalErrorBoards)]);
            }

            table.AddRow(cells.Select(cell => new Text(cell)));
        }

        return table;
    }

    private string Strip(Target target, Board? crossing, bool held) => Text(LaneStrip.Draw(target, crossing, held, _setup!.Hand));

    private static string Text(string words) => Markup.Escape(Clean(words));

    /// <summary>Names and notes come from files and people: no control code of theirs reaches the terminal.</summary>
    private static string Clean(string words) => words.AsSpan().ContainsAnyInRange('\0', '\u001f') || words.AsSpan().ContainsAnyInRange('\u007f', '\u009f')
        ? string.Concat(words.Select(letter => char.IsControl(letter) ? ' ' : letter)) : words;

    private void Line(string markup) => _console.MarkupLine(markup);
}
