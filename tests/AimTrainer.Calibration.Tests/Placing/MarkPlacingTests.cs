using System.Text.Json;
using AimTrainer.Domain;
using CsCheck;

namespace AimTrainer.Calibration.Tests;

public sealed class MarkPlacingTests
{
    private static readonly FitSettings Fitting = new() { Picture = ThrownPicture.FullHd, LaneWidth = ThrownPicture.LaneWidth };

    private static readonly PlacingAction[] Plain =
    [
        new PlacingAction.Set(), new PlacingAction.Set(), new PlacingAction.Set(), new PlacingAction.Skip(), new PlacingAction.Drop(), new PlacingAction.Undo(),
        new PlacingAction.Turn(), new PlacingAction.Check(true), new PlacingAction.Check(false), new PlacingAction.Accept(), new PlacingAction.Abandon(),
    ];

    private static readonly Gen<PlacingAction> Actions = Gen.OneOf<PlacingAction>(
        Gen.Select(Gen.Enum<NudgeDirection>(), Gen.Enum<NudgeStep>(), (direction, step) => (PlacingAction)new PlacingAction.Nudge(direction, step)),
        Gen.Int[-1, 30].Select(mark => (PlacingAction)new PlacingAction.GoTo(mark)),
        Gen.Int[-1, 3].Select(terms => (PlacingAction)new PlacingAction.ChooseDistortion(terms)),
        Gen.Int[0, Plain.Length - 1].Select(plain => Plain[plain]));

    /// <summary>A projector that lights the whole lane.</summary>
    private static readonly ThrownPicture Lit = ThrownPicture.Of(20.75, -240, 150, 240, 0, 1900, default, LaneStretch.Whole with { From = Feet.FromFeet(0) });

    [Fact]
    public void Apply_FourCornersSet_PreviewThenAccepted()
    {
        var state = MarkPlacing.Begin(LaneProfileReader.Default, Fitting);
        for (var i = 0; i < 3; i++)
        {
            state = SetWhereItLies(state);
            Assert.Null(state.Preview);
        }

        Assert.Contains("four are needed", state.Apply(new PlacingAction.Accept()).Said, StringComparison.Ordinal);
        state = SetWhereItLies(state);
        Assert.NotNull(state.Preview!.Fit);

        // With a map the crosshair is already at the next mark: arrow 1.
        Assert.Equal("arrow 1 from the right", state.Mark.Name);
        var there = Lit.Map.PixelOf(state.Mark.Lane);
        Assert.InRange(Math.Abs(state.Crosshair.X - there.X) + Math.Abs(state.Crosshair.Y - there.Y), 0, 3);

        var accepted = state.Apply(new PlacingAction.Accept());
        Assert.Equal(PlacingPhase.Accepted, accepted.Phase);
        Assert.Contains("check picture", accepted.ToDo, StringComparison.Ordinal);
        Assert.Equal(accepted.Marks, accepted.Apply(new PlacingAction.Drop()).Marks);
    }

    [Fact]
    public void Apply_AllMarksOfTheLane_FitIsWithinTheCrosshairsStep()
    {
        var state = MarkPlacing.Begin(LaneProfileReader.Default, Fitting);
        for (var i = 0; i < state.Marks.Count; i++)
        {
            state = SetWhereItLies(state);
        }

        // Each mark is off by at most half a step of half a pixel each way.
        Assert.Contains("every mark is set or left out", state.Said, StringComparison.Ordinal);
        Assert.InRange(state.Preview!.Fit!.Quality.WorstPixels, 0, 0.5);
        Assert.InRange(state.Apply(new PlacingAction.ChooseDistortion(2)).Preview!.Fit!.Quality.RmsPixels, 0, state.Preview.Fit.Quality.RmsPixels);
    }

    [Fact]
    public void Apply_MarksThatGiveNoMap_SaysWhatToDoAndAcceptsNothing()
    {
        var state = MarkPlacing.Begin(LaneProfileReader.Default, Fitting);
        for (var i = 0; i < 4; i++)
        {
            state = state.Apply(new PlacingAction.Set()).Apply(new PlacingAction.Nudge(NudgeDirection.Right, NudgeStep.Coarse));
        }

        Assert.Contains("These marks give no map. ", state.ToDo, StringComparison.Ordinal);
        var refused = state.Apply(new PlacingAction.Accept());
        Assert.Equal(PlacingPhase.Placing, refused.Phase);
        Assert.Contains("lie in a line in the picture", refused.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_EveryState_AreThere()
    {
        var state = MarkPlacing.Begin(LaneProfileReader.Default, Fitting);
        foreach (var each in (MarkPlacing[])[state, state.Apply(new PlacingAction.Abandon())])
        {
            Assert.Contains(
                each.Cautions, caution => caution.Contains("Nobody walks past the foul line to place, check or calibrate a target: the lane is oiled", StringComparison.Ordinal));
            Assert.Contains(each.Cautions, caution => caution.Contains("Do not look into the beam", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Apply_AnyActionsThenAsManyUndos_AllIsAsAtTheStart() => Actions.List[0, 60].Sample(actions =>
    {
        var start = MarkPlacing.Begin(LaneProfileReader.Default, Fitting);
        var state = actions.Aggregate(start, (before, action) => before.Apply(action));
        Assert.InRange(state.Crosshair.X, 0, 1920);
        Assert.InRange(state.Crosshair.Y, 0, 1080);
        Assert.InRange(state.Current, 0, state.Marks.Count - 1);
        Assert.Equal(state.SetCount >= 4, state.Preview is not null);
        while (state.Past.Count > 0)
        {
            state = state.Apply(new PlacingAction.Undo());
        }

        Assert.Equal((start.Marks, 0, PlacingPhase.Placing), (state.Marks, state.Fitting.DistortionTerms, state.Phase));
        Assert.Equal("nothing to undo", state.Apply(new PlacingAction.Undo()).Said);
    }, iter: 300);

    [Fact]
    public void Apply_OneActionThenUndo_TakesBackExactlyThat() => Gen.Select(Actions.List[0, 20], Actions).Sample((actions, last) =>
    {
        var state = actions.Aggregate(MarkPlacing.Begin(LaneProfileReader.Default, Fitting), (before, action) => before.Apply(action));
        var after = state.Apply(last);
        if (last is PlacingAction.Undo || after.Past.Count != state.Past.Count + 1)
        {
            return;
        }

        var back = after.Apply(new PlacingAction.Undo());
        Assert.Equal(
            (state.Marks, state.Current, state.Crosshair, state.Fitting, state.Past, PlacingPhase.Placing),
            (back.Marks, back.Current, back.Crosshair, back.Fitting, back.Past, back.Phase));
    }, iter: 300);

    [Fact]
    public void Actions_WrittenAndRead_AreTheSame() => Actions.Sample(action =>
    {
        var json = JsonSerializer.Serialize(action, DomainJson.Options);
        Assert.Equal(action, JsonSerializer.Deserialize<PlacingAction>(json, DomainJson.Options));
    }, iter: 200);

    [Theory]
    [InlineData("""{"kind":"nudge","direction":"left","step":"coarse"}""")]
    [InlineData("""{"kind":"goTo","mark":3}""")]
    [InlineData("""{"kind":"chooseDistortion","terms":2}""")]
    [InlineData("""{"kind":"set"}""")]
    [InlineData("""{"kind":"check","on":true}""")]
    public void Actions_AsDocumented_AreRead(string json) =>
        Assert.Equal(json, JsonSerializer.Serialize(JsonSerializer.Deserialize<PlacingAction>(json, DomainJson.Options), DomainJson.Options));

    [Fact]
    public void Turn_PictureOnItsHead_KeysGoTheOtherWay()
    {
        var state = MarkPlacing.Begin(LaneProfileReader.Default, Fitting).Apply(new PlacingAction.Turn()).Apply(new PlacingAction.Turn());
        Assert.Equal(new ProjectorPixel(960.5, 540), state.Apply(new PlacingAction.Nudge(NudgeDirection.Left, NudgeStep.Fine)).Crosshair);
        Assert.Equal(new ProjectorPixel(960, 552), state.Apply(new PlacingAction.Nudge(NudgeDirection.Up, NudgeStep.Coarse)).Crosshair);
    }

    [Theory]
    [InlineData(ConsoleKey.LeftArrow, true, """{"kind":"nudge","direction":"left","step":"coarse"}""")]
    [InlineData(ConsoleKey.DownArrow, false, """{"kind":"nudge","direction":"down","step":"fine"}""")]
    [InlineData(ConsoleKey.PageUp, false, """{"kind":"goTo","mark":25}""")]
    [InlineData(ConsoleKey.PageDown, false, """{"kind":"goTo","mark":2}""")]
    [InlineData(ConsoleKey.Enter, false, """{"kind":"set"}""")]
    [InlineData(ConsoleKey.F5, false, "null")]
    public void ActionFor_Key_IsItsAction(ConsoleKey key, bool shift, string json) => Assert.Equal(
        json, JsonSerializer.Serialize(PlacingKeys.ActionFor(key, shift, MarkPlacing.Begin(LaneProfileReader.Default, Fitting)), DomainJson.Options));

    [Fact]
    public void WhyNot_StretchWithFewMarks_SaysWhatToDo()
    {
        var far = Fitting with { Stretch = new LaneStretch(Feet.FromFeet(42), Feet.FromFeet(59), default, default) };
        Assert.Contains("holds 0 of the lane's own marks", MarkPlacing.WhyNot(LaneProfileReader.Default, far), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => MarkPlacing.Begin(LaneProfileReader.Default, far));
        Assert.Null(MarkPlacing.WhyNot(LaneProfileReader.Default, Fitting));
    }

    /// <summary>Moves the crosshair by the keys until it lies on the mark as nearly as it can, and sets it.</summary>
    private static MarkPlacing SetWhereItLies(MarkPlacing state)
    {
        var there = Lit.Map.PixelOf(state.Mark.Lane);
        Assert.True(Lit.Map.Picture.Contains(there), $"{state.Mark}");
        foreach (var (step, pixels) in new[] { (NudgeStep.Coarse, 12.0), (NudgeStep.Fine, 0.5) })
        {
            while (Math.Abs(there.X - state.Crosshair.X) > pixels / 2)
            {
                state = state.Apply(new PlacingAction.Nudge(there.X > state.Crosshair.X ? NudgeDirection.Right : NudgeDirection.Left, step));
            }

            while (Math.Abs(there.Y - state.Crosshair.Y) > pixels / 2)
            {
                state = state.Apply(new PlacingAction.Nudge(there.Y > state.Crosshair.Y ? NudgeDirection.Down : NudgeDirection.Up, step));
            }
        }

        return state.Apply(new PlacingAction.Set());
    }
}
