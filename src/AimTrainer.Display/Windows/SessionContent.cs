using AimTrainer.Calibration;
using AimTrainer.Sessions;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>A window's content that follows a session: it builds a new scene when there is news, and when a result has been shown for long enough.</summary>
public abstract class SessionContent : IWindowContent, IFramePainter
{
    private readonly NewsSlot _news;
    private readonly TimeProvider _clock;
    private DisplayNews? _seen;
    private PictureSize _size;
    private long? _resultAt;
    private long? _resultUntil;
    private bool _isStale = true;
    private bool _isCleared;
    private int _clearings;
    private int _clearedUpTo;

    private protected SessionContent(NewsSlot news, TimeProvider clock) => (_news, _clock) = (news, clock);

    /// <inheritdoc/>
    public IFramePainter Painter => this;

    /// <inheritdoc/>
    public TimeSpan? ChangesIn => _resultUntil is { } until ? _clock.GetElapsedTime(_clock.GetTimestamp(), until) : null;

    /// <summary>How long a result is shown; null keeps it until the next shot.</summary>
    private protected abstract TimeSpan? ResultFor { get; }

    /// <inheritdoc/>
    public bool Refresh(PictureSize size)
    {
        var newest = _news.Newest;
        var now = _clock.GetTimestamp();
        _isStale |= HasNewsOfItsOwn(size, now) | _clearings != _news.Clearings;
        if (ReferenceEquals(newest, _seen) && size == _size && !_isStale && !(now >= _resultUntil))
        {
            return false;
        }

        NoteResult(newest.Snapshot, now);
        _isCleared |= _clearings != _news.Clearings;
        _clearedUpTo = _isCleared ? newest.Snapshot.NextNumber - 1 : _clearedUpTo;
        _clearings = _news.Clearings;
        (_seen, _size, _isStale, _resultUntil) = (newest, size, false, null);
        TimeSpan? since = _resultAt is { } at ? _clock.GetElapsedTime(at, now) : null;
        if (since < ResultFor && !_isCleared)
        {
            _resultUntil = now + (long)((ResultFor - since).Value.TotalSeconds * _clock.TimestampFrequency) + 1;
        }

        Build(newest with { Snapshot = BallLook.WithoutWays(newest.Snapshot, _clearedUpTo) }, size, since, _isCleared);
        return true;
    }

    /// <inheritdoc/>
    public virtual void Placed(WindowPlace place) => _isStale = true;

    /// <inheritdoc/>
    /// <remarks>Escape closes the window, Backspace clears the result that is shown.</remarks>
    public bool Press(KeyPress press)
    {
        if (press.Key == ConsoleKey.Backspace)
        {
            (_isCleared, _isStale) = (true, true);
        }

        return press.Key != ConsoleKey.Escape;
    }

    /// <inheritdoc/>
    public abstract void Start(GL gl);

    /// <inheritdoc/>
    public abstract void Paint(PictureSize size);

    /// <inheritdoc/>
    public abstract void Dispose();

    /// <summary>Whether the picture must be built anew for another reason than the session. Asked at every wake-up.</summary>
    private protected virtual bool HasNewsOfItsOwn(PictureSize size, long now) => false;

    /// <summary>Builds the scene of a moment for the next frame.</summary>
    private protected abstract void Build(DisplayNews news, PictureSize size, TimeSpan? sinceShot, bool cleared);

    /// <summary>A result is as old as its arrival here, except that of a session which was found under way: there the shot says when it came in.</summary>
    private void NoteResult(SessionSnapshot snapshot, long now)
    {
        var before = _seen?.Snapshot;
        if (before?.Setup?.SessionId != snapshot.Setup?.SessionId)
        {
            (_isCleared, _clearedUpTo) = (false, 0);
            _resultAt = snapshot.LastShots.Count > 0 ? now - Stamps(Age(snapshot)) : null;
        }
        else if (before is not null && (before.NextNumber != snapshot.NextNumber || !ReferenceEquals(before.Finished, snapshot.Finished)))
        {
            (_isCleared, _resultAt) = (false, now);
        }
    }

    private TimeSpan Age(SessionSnapshot snapshot)
    {
        var age = _clock.GetUtcNow() - snapshot.LastShots[0].At;
        return age > TimeSpan.Zero ? age : TimeSpan.Zero;
    }

    private long Stamps(TimeSpan span) => (long)(span.TotalSeconds * _clock.TimestampFrequency);
}
