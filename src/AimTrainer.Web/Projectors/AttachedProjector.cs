using System.Globalization;
using System.Text.Json;
using System.Threading.Channels;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>
/// A calibration that goes on in another process and is open to this host's pages as long as its line holds: its newest state, and the
/// actions that wait for it. Safe from many threads.
/// </summary>
/// <param name="station">The station whose lane it is.</param>
/// <param name="projector">The projector's name.</param>
/// <param name="state">Its state as it was attached.</param>
/// <param name="since">When it was attached.</param>
/// <param name="clock">The time.</param>
/// <param name="changed">Called after each change.</param>
internal sealed class AttachedProjector(int station, string projector, JsonElement state, DateTimeOffset since, TimeProvider clock, Action changed)
{
    /// <summary>How long an action waits for its answer.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Most actions that wait; one more is refused, since whoever taps sees nothing of what they tap.</summary>
    private const int MostWaiting = 64;

    private readonly Channel<(long Number, string Action)> _actions = Channel.CreateBounded<(long, string)>(MostWaiting);
    private readonly Dictionary<long, TaskCompletionSource<CalibrationAnswer?>> _waiting = [];
    private readonly Lock _lock = new();
    private JsonElement _state = state;
    private long _lastNumber;
    private bool _left;

    /// <summary>The name of this attachment: what is reported must be of it, and not of one that it took the place of.</summary>
    public string Id { get; } = Secrets.NewId();

    /// <summary>The station whose lane it is.</summary>
    public int Station => station;

    /// <summary>The projector's name.</summary>
    public string Projector => projector;

    /// <summary>When it was attached.</summary>
    public DateTimeOffset Since => since;

    /// <summary>The state that was reported last.</summary>
    public JsonElement State
    {
        get
        {
            lock (_lock)
            {
                return _state;
            }
        }
    }

    /// <summary>Actions to be sent to it, in order; ends when it has left, or when another took its place.</summary>
    public ChannelReader<(long Number, string Action)> Actions => _actions.Reader;

    /// <summary>Whether another took its place.</summary>
    public bool IsReplaced { get; private set; }

    /// <summary>Has it do an action.</summary>
    /// <param name="action">The action, a JSON object.</param>
    /// <param name="cancellationToken">Ends the waiting; the action may be done all the same.</param>
    /// <returns>Its answer; null when none came in time: then nobody knows whether it was done.</returns>
    public async Task<CalibrationAnswer?> DoAsync(string action, CancellationToken cancellationToken)
    {
        long number;
        var answer = new TaskCompletionSource<CalibrationAnswer?>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_lock)
        {
            number = ++_lastNumber;
            if (_left || !_actions.Writer.TryWrite((number, action)))
            {
                return null;
            }

            _waiting.Add(number, answer);
        }

        try
        {
            return await answer.Task.WaitAsync(Patience, clock, cancellationToken).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            return null;
        }
        finally
        {
            lock (_lock)
            {
                _waiting.Remove(number);
            }
        }
    }

    /// <summary>Takes over what it reports.</summary>
    public void Report(CalibrationReport report)
    {
        lock (_lock)
        {
            _state = report.State;
            foreach (var answer in report.Answers)
            {
                if (_waiting.TryGetValue(answer.Number, out var waiting))
                {
                    waiting.TrySetResult(new CalibrationAnswer(answer.Understood, answer.Problem, report.State.GetRawText()));
                }
            }
        }

        changed();
    }

    /// <summary>Its line has ended: whoever waits is told so.</summary>
    /// <param name="replaced">Whether another took its place.</param>
    public void Leave(bool replaced = false)
    {
        lock (_lock)
        {
            IsReplaced |= replaced;
            _left = true;
            _actions.Writer.TryComplete();
            foreach (var waiting in _waiting.Values)
            {
                waiting.TrySetResult(null);
            }
        }
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"projector {projector} of station {station}");
}
