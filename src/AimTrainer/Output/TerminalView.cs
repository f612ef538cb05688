using AimTrainer.Domain;
using AimTrainer.Sessions;
using Spectre.Console;

namespace AimTrainer.Output;

/// <summary>A running session for the person at the terminal: what to aim at, what came of each shot, and the figures at the end.</summary>
internal sealed class TerminalView : ISessionView
{
    private readonly IAnsiConsole _console;
    private SessionSetup? _setup;
    private DrillScript? _drill;
    private Aim? _lastShown;

    public TerminalView(TextWriter output) => _console = Consoles.For(output);

    /// <summary>Whether the aim is printed whenever it changes: wanted where a person throws, noise where shots stream by.</summary>
    public bool SaysWhatToAimAt { get; init; }

    public void Opened(SessionSetup setup, DrillScript drill, bool goesOn)
    {
        (_setup, _drill) = (setup, drill);
        Line($"[bold]{Text(drill.Name)}[/] ({drill.Id})  for {Text(setup.Bowler)}, {Words.Of(setup.Hand)} hand{(setup.Simulated ? ", [yellow]simulated: every shot is invented[/]" : "")}");
        Line(Text($"{drill.Purpose} About {drill.AboutMinutes} minutes. Session {setup.SessionId}{(goesOn ? ", gone on with" : "")}."));
        foreach (var caution in Cautions.Always.Concat(drill.Cautions))
        {
            Line($"[yellow]Take care:[/] {Text(caution)}");
        }

        Line(Text($"The lane from above, {(setup.Hand == Hand.Right ? "board 39 on the left, 1 on the right" : "board 1 on the left, 39 on the right")}: = target, O held, x missed."));
    }

    public void Kept(LogEntry entry, SessionSnapshot now)
    {
        foreach (var happened in entry.Events)
        {
            Show(happened, now);
        }
    }

    public void Notice(string text) => Line($"[yellow]{Text(text)}[/]");

    public void Summary(SessionSetup setup, DrillScript drill, SessionRecord record, string? where)
    {
        Line("");
        foreach (var block in record.Blocks)
        {
            SummaryOf(block);
        }

        if (record.SetAside.Count > 0)
        {
            Line(Text($"{record.SetAside.Count} shots came when none counted; they are kept, not graded."));
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

        if (where is not null)
        {
            Line(Text(where));
        }
    }

    /// <summary>A stored session: who and when, every shot, the figures.</summary>
    public void Record(SessionSetup setup, DrillScript drill, SessionRecord record)
    {
        _setup = setup;
        Line($"[bold]{Text(drill.Name)}[/] ({drill.Id})  {Text(setup.Bowler)}, {Words.Of(setup.Hand)} hand, station {setup.Station}");
        Line(Text(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Session {setup.SessionId}, {setup.At:yyyy-MM-dd HH:mm} UTC")));
        foreach (var block in record.Blocks)
        {
            Line("");
            Line($"[bold]{Text(block.Began.Name)}[/] ({Json.Word(block.Began.BlockKind)}{(block.Began.Attempt > 1 ? $", attempt {block.Began.Attempt}" : "")})");
            foreach (var shot in block.Shots)
            {
                ShowTargets(shot.Shot, shot.Shot.VoidReason is { } why ? $"does not count: {why}" : shot.AsFirstGraded is null ? "" : "corrected");
            }
        }

        Summary(setup, drill, record, null);
    }

    private void Show(SessionEvent happened, SessionSnapshot now)
    {
        switch (happened)
        {
            case SessionEvent.BlockBegan began:
                Line("");
                Line($"[bold]Block {began.Block + 1} of {_drill!.Blocks.Count}: {Text(began.Name)}[/] ({Json.Word(began.BlockKind)}{(began.Attempt > 1 ? $", attempt {began.Attempt}" : "")})");
                _lastShown = null;
                break;
            case SessionEvent.AimShown shown when SaysWhatToAimAt && shown.Aim != _lastShown:
                _lastShown = shown.Aim;
                foreach (var target in shown.Aim.Targets)
                {
                    Line($"     {Strip(target.Target, null, false)} aim at {Text(target.Name)}: {Text(Words.Target(target.Target))}");
                }

                break;
            case SessionEvent.ShotGraded graded:
                Show(graded, now);
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

    private void Show(SessionEvent.ShotGraded graded, SessionSnapshot now)
    {
        ShowTargets(graded.Shot, Progress(graded, now));
        if (graded.Shot.Comparability.IsComparable == false)
        {
            Notice($"     not the same throw: {string.Join("; ", graded.Shot.Comparability.Reasons)}");
        }

        for (var i = 0; i < graded.NextWidths.Count; i++)
        {
            var (next, target) = (graded.NextWidths[i], graded.Shot.Targets[i]);
            if (next.Width != target.Target.Width)
            {
                Line(Text($"     {target.Name}: {(next.Width < target.Target.Width ? "narrower" : "wider")}, {next.Width} boards from now on{(next.Uncertain ? " (not yet sure)" : "")}"));
            }
        }
    }

    private static string Progress(SessionEvent.ShotGraded graded, SessionSnapshot now) =>
        now.Block?.Until.Shots is { } of && now.Throws > 0 ? $"{now.Throws} of {of}" : $"shot {graded.Shot.Number}";

    private void ShowTargets(GradedShot shot, string progress)
    {
        for (var i = 0; i < shot.Targets.Count; i++)
        {
            var result = shot.Targets[i];
            var number = i == 0 ? shot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture).PadLeft(4) : "    ";
            var held = result.Grade?.Holds == true;
            var colour = result.Grade is null ? "grey" : held ? "green" : "red";
            var outcome = result is { Grade: { } grade, Crossing.Board: { } board, Miss: { } miss }
                ? $"board {board}{(result.Crossing.Kind == CrossingKind.Interpolated ? " (worked out)" : "")}, {Words.Miss(miss, _setup!.Hand)}: [{colour}]{Text(grade.Name)}[/], {grade.Points}"
                : $"[{colour}]not measured[/]";
            Line($"{number} {Strip(result.Target, result.Crossing.Board, held)} {Text(result.Name)} {Text(result.Target.Width.ToString())} wide at {Text(result.Target.Centre.ToString())}: {outcome}{(i == 0 && progress.Length > 0 ? $"   [grey]{progress}[/]" : "")}");
        }
    }

    private void SummaryOf(BlockRecord block)
    {
        var counted = block.Shots.AsEnumerable().Count(shot => shot.Shot.VoidReason is null);
        var table = new Table().Border(TableBorder.Simple)
            .Title($"[bold]{Text(block.Began.Name)}[/] ({Json.Word(block.Began.BlockKind)}): {counted} shots, {block.Summary.Points} points{(block.Ended is { } over ? $", {Text(Words.Ended(over.Why))}" : "")}", Style.Plain)
            .AddColumns("target", "graded", "held", "rate (95 % limits)", "bias", "variable", "absolute", "total", "from..to");
        foreach (var target in block.Summary.PerTarget)
        {
            table.AddRow(
                Text(target.Name),
                $"{target.Graded} of {target.Shots}",
                $"{target.Hits}",
                target.HitRate is null ? "-" : $"{Words.Percent(target.HitRate)} ({Words.Percent(target.HitRateLow)} to {Words.Percent(target.HitRateHigh)})",
                Words.Number(target.ConstantErrorBoards),
                Words.Number(target.VariableErrorBoards),
                Words.Number(target.AbsoluteErrorBoards),
                Words.Number(target.TotalErrorBoards),
                target.Graded == 0 ? "-" : $"{target.MinBoard}..{target.MaxBoard}");
        }

        if (counted > 0)
        {
            _console.Write(table);
        }
        else
        {
            Line($"[bold]{Text(block.Began.Name)}[/] ({Json.Word(block.Began.BlockKind)}): no shots");
        }

        foreach (var threshold in block.Ended?.Thresholds ?? [])
        {
            Line(Text($"  {threshold.Target}: hits and misses balance at {Words.Number(threshold.Threshold.Boards)} boards (mean of the last {threshold.Threshold.Reversals} reversals)"));
        }
    }

    private string Strip(Target target, Board? crossing, bool held) => Text(LaneStrip.Draw(target, crossing, held, _setup!.Hand));

    private static string Text(string words) => Markup.Escape(words);

    private void Line(string markup) => _console.MarkupLine(markup);
}
