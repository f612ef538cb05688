using System.Text.Json;
using AimTrainer.Calibration;
using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>A calibration by hand: its keys, the same actions from elsewhere, and what is saved.</summary>
public sealed class CalibrationDeskTests
{
    [Fact]
    public void Do_ActionsOfAPhone_PlaceMarksAndSaveTheMapOfThisMonitorAndMode()
    {
        using var work = new TestedCalibration();
        ICalibrationDoor door = work.Started(TestedCalibration.Monitor).Desk;
        work.SetNext(6);

        var answer = door.Do("""{ "kind": "accept" }""");

        Assert.True(answer.Understood, answer.Problem);
        var state = JsonDocument.Parse(answer.StateJson).RootElement;
        Assert.Equal("accepted", state.GetProperty("phase").GetString());
        Assert.Equal("station-3.near.0001.json", state.GetProperty("saved").GetString());
        Assert.InRange(state.GetProperty("fit").GetProperty("rmsPixels").GetDouble(), 0.001, 0.5);
        Assert.Equal(6, state.GetProperty("marks").EnumerateArray().Count(mark => mark.GetProperty("state").GetString() == "set"));
        Assert.Equal(PlacingCautions.All.AsEnumerable(), state.GetProperty("cautions").EnumerateArray().Select(text => text.GetString()!));
        Assert.Equal(door.Version, state.GetProperty("version").GetInt64());
        var load = work.Store.Load(new MapPlace(3, "near"), TestedCalibration.Monitor);
        Assert.Equal(6, load.Map!.Marks.Count);
        Assert.Contains("saved as station-3.near.0001.json", work.Said);
    }

    [Fact]
    public void Do_Nudges_MoveTheCrosshairAndAreNotWorthAWord()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor);
        var before = work.Changes;

        work.Desk.Do("""{ "kind": "nudge", "direction": "left", "step": "coarse" }""");
        var state = JsonDocument.Parse(work.Desk.Do("""{ "kind": "nudge", "direction": "down", "step": "fine" }""").StateJson).RootElement;

        Assert.Equal((948, 540.5), (state.GetProperty("crosshair").GetProperty("x").GetDouble(), state.GetProperty("crosshair").GetProperty("y").GetDouble()));
        Assert.Equal((2, 0), (work.Changes - before, work.Said.Count));
    }

    [Fact]
    public void Do_CheckPicture_IsShownOverTheFitUntilSomethingIsDone()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor);
        bool Shown(string action) => JsonDocument.Parse(work.Desk.Do(action).StateJson).RootElement.GetProperty("checkPicture").GetBoolean();
        string Words() => string.Join(' ', CalibrationScene.Build(work.Desk.Now, ThemeLibrary.Default).Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Writing>().Select(writing => writing.Text));

        // Without a map there is nothing to show.
        Assert.False(Shown("""{ "kind": "check", "on": true }"""));
        Assert.Contains("no map yet", work.Desk.Now.Placing.Said, StringComparison.Ordinal);
        work.SetNext(5);
        Assert.True(Shown("""{ "kind": "check", "on": true }"""));
        Assert.Contains("Check picture", Words(), StringComparison.Ordinal);
        Assert.All(PlacingCautions.All.AsEnumerable(), caution => Assert.Contains(caution, Words(), StringComparison.Ordinal));
        Assert.False(Shown("""{ "kind": "check", "on": false }"""));
        Assert.DoesNotContain("Check picture", Words(), StringComparison.Ordinal);
        Assert.True(Shown("""{ "kind": "check", "on": true }"""));
        Assert.False(Shown("""{ "kind": "nudge", "direction": "left", "step": "fine" }"""));
        Assert.True(Shown("""{ "kind": "accept" }"""));
        Assert.False(Shown("""{ "kind": "undo" }"""));
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("""{ "kind": "dance" }""")]
    [InlineData("""{ "kind": "nudge" }""")]
    [InlineData("""{ "kind": "nudge", "direction": "sideways", "step": "fine" }""")]
    [InlineData("""{ "kind": "goTo" }""")]
    [InlineData("""{ "kind": "goTo", "mark": "two" }""")]
    [InlineData("""{ "kind": "set", "extra": 1 }""")]
    public void Do_WhatIsNoAction_ChangesNothingAndSaysWhatIsAllowed(string json)
    {
        using var work = new TestedCalibration();
        var before = work.Started(TestedCalibration.Monitor).Desk.Now;

        var answer = work.Desk.Do(json);

        Assert.False(answer.Understood);
        Assert.Contains("found ", answer.Problem, StringComparison.Ordinal);
        Assert.Contains("allowed: an action as {\"kind\":\"set\"}", answer.Problem, StringComparison.Ordinal);
        Assert.Same(before, work.Desk.Now);
    }

    [Fact]
    public void Do_EndlessText_IsRefused()
    {
        using var work = new TestedCalibration();

        Assert.Contains("found 1001 characters", work.Started(null).Desk.Do(new string(' ', 1001)).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Undo_AfterAccepting_TakesTheSaveBackAndTheMapBeforeHolds()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor).SetNext(6);
        work.Desk.Apply(new PlacingAction.Accept());
        var first = work.Store.Load(new MapPlace(3, "near"), TestedCalibration.Monitor).File;
        work.Desk.Apply(new PlacingAction.Undo());
        Assert.Null(work.Store.Load(new MapPlace(3, "near"), TestedCalibration.Monitor).Map);

        work.Desk.Apply(new PlacingAction.Accept());

        Assert.EndsWith("station-3.near.0002.json", work.Store.Load(new MapPlace(3, "near"), TestedCalibration.Monitor).File, StringComparison.Ordinal);
        Assert.EndsWith("station-3.near.0001.json", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Accept_InAnOrdinaryWindow_SavesNothingAndSaysSo()
    {
        using var work = new TestedCalibration();
        work.Started(null).SetNext(6);

        var view = work.Desk.Apply(new PlacingAction.Accept());

        Assert.Equal((PlacingPhase.Accepted, null), (view.Placing.Phase, view.SavedFile));
        Assert.Contains("is not saved", view.Placing.Said, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(work.Folder));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Accept_MonitorGoneOrChangedMeanwhile_SavesNothingUntilItIsBack(bool gone)
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor).SetNext(6);

        work.Desk.Placed(new PictureSize(800, 600), gone ? null : TestedCalibration.Monitor with { Size = new PictureSize(800, 600) }, gone ? "screen" : null);
        var refused = work.Desk.Apply(new PlacingAction.Accept());
        work.Desk.Placed(TestedCalibration.Picture, TestedCalibration.Monitor, null);
        var saved = work.Desk.Apply(new PlacingAction.Accept());

        Assert.Equal((PlacingPhase.Placing, null), (refused.Placing.Phase, refused.SavedFile));
        Assert.Contains(gone ? "Monitor screen is away" : "The monitor has changed", refused.Placing.Said, StringComparison.Ordinal);
        Assert.NotNull(saved.SavedFile);
    }

    [Fact]
    public void Accept_FolderCannotBeWritten_StaysWithTheMarksAndSaysWhy()
    {
        using var work = new TestedCalibration(folder: "file");
        File.WriteAllText(Path.Combine(work.Folder, "file"), "");
        work.Started(TestedCalibration.Monitor).SetNext(6);

        var view = work.Desk.Apply(new PlacingAction.Accept());

        Assert.Equal(PlacingPhase.Placing, view.Placing.Phase);
        Assert.Contains("the map was not saved", view.Placing.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Set_WhereThePreviewHasTheMarkAlready_AsksWhetherAnybodyLooked()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor).SetNext(4);

        Assert.Contains("is set where the map had it already", work.Desk.Apply(new PlacingAction.Set()).Placing.Said, StringComparison.Ordinal);
        Assert.DoesNotContain("already", work.SetNext(1).Desk.Now.Placing.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void Press_KeysOfTheWindow_DoWhatTheDoorDoesAndCloseItAtTheEnd()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor).SetNext(5);
        using var content = new CalibrationContent(work.Desk, ThemeLibrary.Default);
        bool Press(ConsoleKey key, bool repeats = false) => content.Press(new KeyPress(key, false, repeats));

        Assert.True(Press(ConsoleKey.Escape));
        Assert.Equal(PlacingPhase.Abandoned, work.Desk.Now.Placing.Phase);
        Assert.True(Press(ConsoleKey.Escape, repeats: true));
        Assert.True(Press(ConsoleKey.U));
        Assert.True(Press(ConsoleKey.A));
        Assert.Equal(PlacingPhase.Accepted, work.Desk.Now.Placing.Phase);
        Assert.False(Press(ConsoleKey.Enter));
        Assert.True(work.Desk.Over.IsCompletedSuccessfully);
    }

    [Fact]
    public void Refresh_NothingNew_BuildsNothing()
    {
        using var work = new TestedCalibration();
        work.Started(TestedCalibration.Monitor);
        using var content = new CalibrationContent(work.Desk, ThemeLibrary.Default);

        Assert.Equal([true, false], [content.Refresh(TestedCalibration.Picture), content.Refresh(TestedCalibration.Picture)]);
        work.Desk.Do("""{ "kind": "turn" }""");
        Assert.Equal([true, false], [content.Refresh(TestedCalibration.Picture), content.Refresh(TestedCalibration.Picture)]);
    }
}
