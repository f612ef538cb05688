using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>
/// A calibration by hand, as a state: the lane's own marks, a crosshair in the picture, and a preview of the map as soon as four marks
/// are set. <see cref="Apply"/> is the only way on, so keys, a phone and a test all do the same things. Pure.
/// </summary>
public sealed record MarkPlacing
{
    private const int MostPast = 100;

    private MarkPlacing()
    {
    }

    /// <summary>The marks, in the order in which they are best placed.</summary>
    public required ValueList<PlacedMark> Marks { get; init; }

    /// <summary>The mark gone to, by its place in the list, from 0.</summary>
    public required int Current { get; init; }

    /// <summary>Where the crosshair is.</summary>
    public required ProjectorPixel Crosshair { get; init; }

    /// <summary>What the fit knows beside the marks.</summary>
    public required FitSettings Fitting { get; init; }

    /// <summary>How far the crosshair moves.</summary>
    public required PlacingSettings Steps { get; init; }

    /// <summary>By how many quarters the directions are turned, 0 to 3.</summary>
    public required int QuarterTurns { get; init; }

    /// <summary>Where the calibration stands.</summary>
    public required PlacingPhase Phase { get; init; }

    /// <summary>The fit to the marks set so far; null while fewer than four are.</summary>
    public required FitOutcome? Preview { get; init; }

    /// <summary>Whether the check picture is shown over the fit instead of the marks.</summary>
    public bool Checking { get; private init; }

    /// <summary>What came of the last action, in words.</summary>
    public required string Said { get; init; }

    /// <summary>What undo goes back to, the newest last.</summary>
    public required ValueList<PlacingMemory> Past { get; init; }

    /// <summary>What can hurt somebody; every view of the state shows it.</summary>
    public ValueList<string> Cautions { get; } = PlacingCautions.All;

    /// <summary>The mark gone to.</summary>
    public PlacedMark Mark => Marks[Current];

    /// <summary>How many marks are set.</summary>
    public int SetCount => Marks.AsEnumerable().Count(mark => mark.Pixel is not null);

    /// <summary>What to do next, in words.</summary>
    public string ToDo => Phase switch
    {
        PlacingPhase.Accepted => "The map is accepted. Look at the check picture from behind the foul line: its lines must lie on the lane's own marks.",
        PlacingPhase.Abandoned => "Given up. The map that was used before stays.",
        _ => Preview is { Fit: null } && SetCount >= FitSettings.MarksNeeded(Fitting.DistortionTerms)
            ? $"These marks give no map. {Preview.Refusals[0].ToDo}."
            : $"From behind the foul line, move the crosshair onto {Mark.Name} and set it.",
    };

    /// <summary>Why no calibration can start, in words; null when one can.</summary>
    /// <param name="lane">The lane, whose marks are placed.</param>
    /// <param name="fitting">Picture, lane width, stretch, limits.</param>
    public static string? WhyNot(LaneProfile lane, FitSettings fitting) => LaneMarks.Of(lane, fitting.Stretch).Count is var count && count >= FitSettings.MarksNeeded(0)
        ? null
        : FormattableString.Invariant($"this stretch holds {count} of the lane's own marks, and a map needs {FitSettings.MarksNeeded(0)}: ")
            + "make it longer, or add marks to the lane profile";

    /// <summary>Starts a calibration with the crosshair in the middle of the picture.</summary>
    /// <param name="lane">The lane, whose marks are placed.</param>
    /// <param name="fitting">Picture, lane width, stretch, limits.</param>
    /// <param name="steps">How far the crosshair moves; null takes <see cref="PlacingSettings.Usual"/>.</param>
    /// <exception cref="ArgumentException">The stretch holds fewer than four of the lane's marks: ask <see cref="WhyNot"/> first.</exception>
    public static MarkPlacing Begin(LaneProfile lane, FitSettings fitting, PlacingSettings? steps = null)
    {
        var marks = LaneMarks.Of(lane, fitting.Stretch);
        if (WhyNot(lane, fitting) is { } why)
        {
            throw new ArgumentException(why, nameof(fitting));
        }

        return new MarkPlacing
        {
            Marks = marks,
            Current = 0,
            Crosshair = new ProjectorPixel(fitting.Picture.Width / 2.0, fitting.Picture.Height / 2.0),
            Fitting = fitting,
            Steps = steps ?? PlacingSettings.Usual,
            QuarterTurns = 0,
            Phase = PlacingPhase.Placing,
            Preview = null,
            Said = $"{marks.Count} marks to place; four that are far apart give a map, more make it better",
            Past = [],
        };
    }

    /// <summary>The state after an action. An action that makes no sense changes nothing but <see cref="Said"/>, which says why.</summary>
    public MarkPlacing Apply(PlacingAction action)
    {
        // Nobody moves a crosshair that is not shown: whatever is done goes back to the marks.
        var after = Done(action);
        return after.Checking && action is not PlacingAction.Check ? after with { Checking = false } : after;
    }

    private MarkPlacing Done(PlacingAction action) => (Phase, action) switch
    {
        (_, PlacingAction.Undo) => Undone(),
        (not PlacingPhase.Placing, _) => this with { Said = "this calibration is over; undo goes back into it" },
        (_, PlacingAction.Nudge nudge) => Nudged(nudge),
        (_, PlacingAction.GoTo goTo) => Gone(goTo.Mark),
        (_, PlacingAction.Set) => WasSet(),
        (_, PlacingAction.Skip) => Skipped(),
        (_, PlacingAction.Drop) => Dropped(),
        (_, PlacingAction.Turn) => this with { QuarterTurns = (QuarterTurns + 1) % 4, Said = "the directions are turned by a quarter" },
        (_, PlacingAction.ChooseDistortion choice) => Distorted(choice.Terms),
        (_, PlacingAction.Check check) => Checked(check.On),
        (_, PlacingAction.Accept) => Accepted(),
        (_, PlacingAction.Abandon) => Remembering("giving up") with { Phase = PlacingPhase.Abandoned, Said = "given up; the map that was used before stays" },
        _ => this with { Said = "that is no action of a calibration" },
    };

    private MarkPlacing Nudged(PlacingAction.Nudge nudge)
    {
        var (x, y) = nudge.Direction switch
        {
            NudgeDirection.Left => (-1, 0),
            NudgeDirection.Right => (1, 0),
            NudgeDirection.Up => (0, -1),
            _ => (0, 1),
        };
        for (var turn = 0; turn < QuarterTurns; turn++)
        {
            (x, y) = (-y, x);
        }

        var pixels = nudge.Step == NudgeStep.Fine ? Steps.FinePixels : Steps.CoarsePixels;
        var moved = new ProjectorPixel(
            Math.Clamp(Crosshair.X + (x * pixels), 0, Fitting.Picture.Width), Math.Clamp(Crosshair.Y + (y * pixels), 0, Fitting.Picture.Height));
        return this with { Crosshair = moved, Said = moved == Crosshair ? "the crosshair is at the edge of the picture" : "" };
    }

    private MarkPlacing Gone(int number) => number < 1 || number > Marks.Count
        ? this with { Said = FormattableString.Invariant($"there is no mark {number}; allowed: 1 to {Marks.Count}") }
        : At(number - 1) with { Said = $"{Marks[number - 1].Name}: {(Marks[number - 1].Pixel is null ? "not set" : "set; set it again to change it")}" };

    private MarkPlacing WasSet()
    {
        var set = Remembering($"setting {Mark.Name}") with { Marks = With(Mark with { Pixel = Crosshair, Skipped = false }) };

        // Enter pressed over and over along the preview would make any map look perfect.
        var untouched = Mark.Pixel is null && Crosshair == Preview?.Fit?.Map.TryPixelOf(Mark.Lane);
        return set.Fitted().OnToNext(untouched ? $"{Mark.Name} is set where the map had it already: did you look?" : $"{Mark.Name} is set");
    }

    private MarkPlacing Skipped() => Mark.Pixel is not null
        ? this with { Said = $"{Mark.Name} is set; drop it first to leave it out" }
        : (Remembering($"skipping {Mark.Name}") with { Marks = With(Mark with { Skipped = true }) }).OnToNext($"{Mark.Name} is left out");

    private MarkPlacing Dropped() => Mark is { Pixel: null, Skipped: false }
        ? this with { Said = $"{Mark.Name} is not set" }
        : (Remembering($"dropping {Mark.Name}") with { Marks = With(Mark with { Pixel = null, Skipped = false }) }).Fitted() with { Said = $"{Mark.Name} is dropped" };

    private MarkPlacing Distorted(int terms)
    {
        if (terms is < 0 or > FitSettings.MostTerms)
        {
            return this with { Said = "a lens has 0, 1 or 2 distortion terms" };
        }

        var chosen = (Remembering("choosing the distortion") with { Fitting = Fitting with { DistortionTerms = terms } }).Fitted();
        return chosen with { Said = FormattableString.Invariant($"lens terms: {terms}; that needs {FitSettings.MarksNeeded(terms)} marks, {SetCount} are set") };
    }

    private MarkPlacing Checked(bool on) => on && Preview is not { Fit: not null }
        ? this with { Said = "no map yet: the check picture needs one" }
        : this with { Checking = on, Said = on ? "the check picture is shown; do its lines lie on the lane's own?" : "back to the marks" };

    private MarkPlacing Accepted() => Preview is { Fit: not null }
        ? Remembering("accepting") with { Phase = PlacingPhase.Accepted, Said = "the map is accepted" }
        : this with
        {
            Said = Preview is null
                ? FormattableString.Invariant($"no map yet: {SetCount} marks are set, four are needed")
                : $"no map to accept: {Preview.Refusals[0]}",
        };

    private MarkPlacing Undone()
    {
        if (Past.Count == 0)
        {
            return this with { Said = "nothing to undo" };
        }

        var last = Past[^1];
        var back = this with
        {
            Marks = last.Marks,
            Current = last.Current,
            Crosshair = last.Crosshair,
            Fitting = Fitting with { DistortionTerms = last.DistortionTerms },
            Phase = PlacingPhase.Placing,
            Past = Past.AsEnumerable().SkipLast(1).ToValueList(),
        };
        return back.Fitted() with { Said = $"taken back: {last.What}" };
    }

    private MarkPlacing OnToNext(string said)
    {
        for (var step = 1; step <= Marks.Count; step++)
        {
            var next = (Current + step) % Marks.Count;
            if (Marks[next] is { Pixel: null, Skipped: false })
            {
                return At(next) with { Said = said };
            }
        }

        return this with { Said = $"{said}; every mark is set or left out" };
    }

    /// <summary>Goes to a mark; the crosshair goes where the mark is set, else where the preview puts it, else stays.</summary>
    private MarkPlacing At(int mark)
    {
        var guess = Marks[mark].Pixel ?? Preview?.Fit?.Map.TryPixelOf(Marks[mark].Lane);
        return this with { Current = mark, Crosshair = guess is { } pixel && Fitting.Picture.Contains(pixel) ? pixel : Crosshair };
    }

    private MarkPlacing Fitted() => this with
    {
        Preview = SetCount < FitSettings.MarksNeeded(0)
            ? null
            : MapFitter.Fit([.. Marks.AsEnumerable().Where(mark => mark.Pixel is not null).Select(mark => new CalibrationMark(mark.Lane, mark.Pixel!.Value, mark.Name))], Fitting),
    };

    private ValueList<PlacedMark> With(PlacedMark mark) => Marks.AsEnumerable().Select((old, i) => i == Current ? mark : old).ToValueList();

    private MarkPlacing Remembering(string what) => this with
    {
        Past = Past.AsEnumerable().TakeLast(MostPast - 1).Append(new PlacingMemory(Marks, Current, Crosshair, Fitting.DistortionTerms, what)).ToValueList(),
    };
}
