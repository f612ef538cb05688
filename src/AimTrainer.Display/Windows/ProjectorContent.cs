using AimTrainer.Calibration;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>The light that a projector throws on a lane; without a map that can be trusted a notice instead of a target.</summary>
/// <param name="news">What it shows.</param>
/// <param name="maps">The map for a place and a size; asked when either is new, and once a second: a map that is saved meanwhile is used at once.</param>
/// <param name="theme">Its colours.</param>
/// <param name="clock">The time.</param>
/// <param name="shown">Told by which map a session is drawn, and where, each time it is built; null for nobody.</param>
public sealed class ProjectorContent(
    NewsSlot news, Func<WindowPlace, PictureSize, MapChoice> maps, Theme theme, TimeProvider clock, Action<WindowPlace, ProjectorMap, SessionSnapshot>? shown = null)
    : SessionContent(news, clock)
{
    private static readonly TimeSpan LookAtMapsEvery = TimeSpan.FromSeconds(0.9);

    private readonly TimeProvider _clock = clock;
    private readonly ProjectorPainter _lane = new();
    private readonly OverheadPainter _words = new();
    private WindowPlace? _place;
    private bool _showsLane;
    private MapChoice? _choice;
    private long _lookedAt;

    private protected override TimeSpan? ResultFor => TimeSpan.FromSeconds(12);

    /// <summary>The scene on the lane.</summary>
    public static Scene<LanePoint> SceneOf(DisplayNews news, TimeSpan? sinceShot, bool cleared, Theme theme) => SourceNotice.On(
        ProjectorScene.Build(new ProjectorSceneInput { Snapshot = news.Snapshot, SinceShot = sinceShot, Cleared = cleared, Theme = theme }),
        news,
        news.Snapshot.Setup?.Lane ?? LaneProfileReader.Default,
        theme);

    /// <summary>What is shown in the place of a target where there is no map.</summary>
    public static Scene<ScreenPoint> NoMapScene(PictureSize size, Theme theme, string? why)
    {
        var aspect = (double)size.Width / size.Height;
        var fitting = Math.Clamp(aspect, 1, 4);
        return SceneFit.Into(NoticeScene.Uncalibrated(fitting, theme, why), fitting, aspect);
    }

    /// <inheritdoc/>
    public override void Placed(WindowPlace place)
    {
        _place = place;
        base.Placed(place);
    }

    /// <inheritdoc/>
    public override void Start(GL gl)
    {
        _lane.Start(gl);
        _words.Start(gl);
    }

    /// <inheritdoc/>
    public override void Paint(PictureSize size)
    {
        if (_showsLane)
        {
            _lane.Paint(size);
        }
        else
        {
            _words.Paint(size);
        }
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _lane.Dispose();
        _words.Dispose();
    }

    private protected override bool HasNewsOfItsOwn(PictureSize size, long now)
    {
        if (_choice is null || _clock.GetElapsedTime(_lookedAt, now) < LookAtMapsEvery)
        {
            return false;
        }

        _lookedAt = now;
        return maps(_place!, size) != _choice;
    }

    private protected override void Build(DisplayNews news, PictureSize size, TimeSpan? sinceShot, bool cleared)
    {
        _choice = maps(_place!, size);
        _lookedAt = _clock.GetTimestamp();
        var choice = news.Snapshot.Setup is { } setup ? _choice.For(setup.Lane) : _choice;
        if (choice.Map is { } map && MapCheck.ProblemOf(map) is { } problem)
        {
            choice = new MapChoice(null, problem);
        }

        _showsLane = choice.Map is not null;
        if (choice.Map is not null)
        {
            _lane.Show(SceneOf(news, sinceShot, cleared, theme), choice.Map);
            shown?.Invoke(_place!, choice.Map, news.Snapshot);
        }
        else
        {
            _words.Show(NoMapScene(size, theme, choice.Why));
        }
    }
}
