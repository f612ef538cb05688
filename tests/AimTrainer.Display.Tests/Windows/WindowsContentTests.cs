using AimTrainer.Calibration;
using AimTrainer.Sessions;

namespace AimTrainer.Display.Tests;

/// <summary>When a window's picture is built anew, and when it is left alone.</summary>
public sealed class WindowsContentTests
{
    private static readonly PictureSize _size = new(320, 180);

    private readonly HandClock _clock = new();
    private readonly NewsSlot _news = new(new DisplayNews(SessionSnapshot.Idle(1), null), () => { });

    [Fact]
    public void Refresh_NothingNew_OnlyOnce()
    {
        using var content = new OverheadContent(_news, ThemeLibrary.Default, _clock);

        Assert.Equal([true, false, false], [content.Refresh(_size), content.Refresh(_size), content.Refresh(_size)]);
        Assert.Null(content.ChangesIn);
    }

    [Fact]
    public void Refresh_NewsNewSizeOrClearing_BuildsAnew()
    {
        using var content = new OverheadContent(_news, ThemeLibrary.Default, _clock);
        content.Refresh(_size);

        _news.Put(new DisplayNews(SessionSnapshot.Idle(1), "the record is away"));
        Assert.True(content.Refresh(_size));
        Assert.True(content.Refresh(new PictureSize(180, 320)));
        Assert.True(content.Press(new KeyPress(ConsoleKey.Backspace, false, false)));
        Assert.True(content.Refresh(new PictureSize(180, 320)));
        Assert.False(content.Press(new KeyPress(ConsoleKey.Escape, false, false)));
    }

    [Fact]
    public void Refresh_ResultOnTheLane_GoesByItselfAfterItsTime()
    {
        using var content = new ProjectorContent(_news, (_, _) => new MapChoice(null, null), ThemeLibrary.Default, _clock);
        content.Placed(new WindowPlace(false, 0, 0, _size, null, null));
        content.Refresh(_size);
        Assert.Null(content.ChangesIn);

        _news.Put(new DisplayNews(SessionSnapshot.Idle(1) with { NextNumber = 2 }, null));
        Assert.True(content.Refresh(_size));
        Assert.InRange(content.ChangesIn!.Value, TimeSpan.FromSeconds(11.9), TimeSpan.FromSeconds(12.1));

        _clock.Advance(TimeSpan.FromSeconds(11));
        Assert.False(content.Refresh(_size));
        _clock.Advance(TimeSpan.FromSeconds(1.1));
        Assert.True(content.Refresh(_size));
        Assert.False(content.Refresh(_size));
        Assert.Null(content.ChangesIn);
    }

    [Fact]
    public void Refresh_ClearedByTheCoach_GoesAtOnceOnEveryDisplayUntilTheNextShot()
    {
        using var lane = new ProjectorContent(_news, (_, _) => new MapChoice(null, null), ThemeLibrary.Default, _clock);
        using var screen = new OverheadContent(_news, ThemeLibrary.Default, _clock);
        lane.Placed(new WindowPlace(false, 0, 0, _size, null, null));
        _news.Put(new DisplayNews(SessionSnapshot.Idle(1) with { NextNumber = 1 }, null));
        lane.Refresh(_size);
        _news.Put(new DisplayNews(SessionSnapshot.Idle(1) with { NextNumber = 2 }, null));
        Assert.True(lane.Refresh(_size) & screen.Refresh(_size));
        Assert.NotNull(lane.ChangesIn);

        _news.Clear();

        Assert.True(lane.Refresh(_size) & screen.Refresh(_size));
        Assert.Null(lane.ChangesIn);
        Assert.False(lane.Refresh(_size) | screen.Refresh(_size));
        _news.Put(new DisplayNews(SessionSnapshot.Idle(1) with { NextNumber = 3 }, null));
        lane.Refresh(_size);
        Assert.NotNull(lane.ChangesIn);
    }

    [Fact]
    public void Refresh_AnotherMapIsSaved_IsTakenWithinASecondWithoutNews()
    {
        var choice = new MapChoice(null, null);
        using var lane = new ProjectorContent(_news, (_, _) => choice, ThemeLibrary.Default, _clock);
        lane.Placed(new WindowPlace(false, 0, 0, _size, null, null));
        lane.Refresh(_size);
        _clock.Advance(TimeSpan.FromSeconds(1));
        Assert.False(lane.Refresh(_size));

        choice = new MapChoice(null, "another");
        _clock.Advance(TimeSpan.FromSeconds(1));

        Assert.True(lane.Refresh(_size));
        Assert.False(lane.Refresh(_size));
    }

    [Theory]
    [InlineData(41.5, 1)]
    [InlineData(42, 0)]
    public void Refresh_MapOfAnotherLanesWidth_ShowsNoTarget(double width, int drawn)
    {
        var snapshot = SceneStates.All().Single(state => state.Name == "line-held").Projector.Snapshot;
        Assert.Equal(41.5, snapshot.Setup!.Lane.Width.Value);
        var choice = new MapChoice(OpenGlSamples.Maps["straight, from above the bowler"], null) { LaneWidth = Domain.Inches.FromInches(width) };
        var shown = 0;
        using var lane = new ProjectorContent(_news, (_, _) => choice, ThemeLibrary.Default, _clock, (_, _, _) => shown++);
        lane.Placed(new WindowPlace(false, 0, 0, _size, null, null));
        _news.Put(new DisplayNews(snapshot, null));

        lane.Refresh(_size);

        Assert.Equal(drawn, shown);
        Assert.Equal(
            drawn == 1 ? null : "The map of this projector is for a lane of 42 in; the session's lane has 41.5 in. Calibrate with this lane.",
            choice.For(snapshot.Setup.Lane).Why);
    }

    [Theory]
    [InlineData(100, 1000)]
    [InlineData(1, 1)]
    [InlineData(5000, 100)]
    public void SceneOf_OddShapes_LiesInsideThePicture(int width, int height)
    {
        var scene = OverheadContent.SceneOf(_news.Newest, new PictureSize(width, height), null, false, ThemeLibrary.Default);

        var aspect = (double)width / height;
        Assert.All(scene.Shapes.AsEnumerable().OfType<Shape<ScreenPoint>.Polygon>().SelectMany(polygon => polygon.Corners.AsEnumerable()), corner =>
        {
            Assert.InRange(corner.X, -1e-9, aspect + 1e-9);
            Assert.InRange(corner.Y, -1e-9, 1 + 1e-9);
        });
    }

    [Fact]
    public void SceneOf_SourceIsAway_SaysSoOverTheLastPicture()
    {
        var away = _news.Newest with { Notice = "whatever" };

        Assert.Contains("No news of the session", Texts(OverheadContent.SceneOf(away, _size, null, false, ThemeLibrary.Default)));
        Assert.Contains("no news", Texts(ProjectorContent.SceneOf(away, null, false, ThemeLibrary.Default)));
        Assert.DoesNotContain("no news", Texts(ProjectorContent.SceneOf(_news.Newest, null, false, ThemeLibrary.Default)));
    }

    private static IEnumerable<string> Texts<TPoint>(Scene<TPoint> scene)
        where TPoint : struct => scene.Shapes.AsEnumerable().OfType<Shape<TPoint>.Writing>().Select(writing => writing.Text);

    private sealed class HandClock : TimeProvider
    {
        private TimeSpan _passed = TimeSpan.FromHours(1);

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public void Advance(TimeSpan by) => _passed += by;

        public override long GetTimestamp() => _passed.Ticks;

        public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch + _passed;
    }
}
