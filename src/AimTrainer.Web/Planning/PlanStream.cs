using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// The answer of a long computation as it comes: events <c>progress</c>, then one of <c>answer</c>, <c>refused</c> and <c>stopped</c>. It ends
/// when the reader leaves.
/// </summary>
/// <param name="work">Where it is computed.</param>
/// <param name="clock">The clock.</param>
/// <param name="compute">The computation: a document; what is impossible throws an <see cref="ArgumentException"/> with words.</param>
internal sealed class PlanStream(PlanWork work, TimeProvider clock, Func<Action<double>, CancellationToken, object> compute) : IResult
{
    /// <summary>No computation of a person's wish takes longer on a machine that this program is for.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(3);

    private static readonly TimeSpan TellEvery = TimeSpan.FromMilliseconds(300);

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var visitor = Visitor.Of(httpContext)?.PassId ?? $"{httpContext.Connection.RemoteIpAddress}";
        using var turn = work.Enter(visitor);
        if (turn is null)
        {
            await Problems.TooMany($"turn: found {PlanWork.MostAtOnce} visitors who wait for a computation; allowed: try again in a minute")
                .ExecuteAsync(httpContext).ConfigureAwait(false);
            return;
        }

        await EventStream.RunAsync(httpContext, (stream, left) => AnswerAsync(turn, stream, left)).ConfigureAwait(false);
    }

    private async Task AnswerAsync(PlanTurn turn, EventStream stream, CancellationToken left)
    {
        using var tooLong = new CancellationTokenSource(Longest, clock);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(left, turn.Replaced, tooLong.Token);
        var running = turn.RunAsync(compute, over.Token);
        try
        {
            for (var number = 1L; !running.IsCompleted; number++)
            {
                await SendAsync(stream, "progress", number, new { turn.Share }, left).ConfigureAwait(false);
                await Task.WhenAny(running, Task.Delay(TellEvery, clock, left)).ConfigureAwait(false);
            }
        }
        catch (Exception exception) when (exception is OperationCanceledException or IOException)
        {
            // The reader left: nobody wants the answer, and the turn is free when the work has seen it.
            await over.CancelAsync().ConfigureAwait(false);
            await Task.WhenAny(running).ConfigureAwait(false);
            return;
        }

        var (name, document) = await EndAsync(running, turn, left).ConfigureAwait(false);
        await SendAsync(stream, name, 0, document, left).ConfigureAwait(false);
    }

    private static async Task<(string Name, object Document)> EndAsync(Task<object> running, PlanTurn turn, CancellationToken left)
    {
        try
        {
            return ("answer", await running.ConfigureAwait(false));
        }
        catch (ArgumentException exception)
        {
            return ("refused", new { Why = exception.Message });
        }
        catch (OperationCanceledException) when (!left.IsCancellationRequested)
        {
            return ("stopped", new
            {
                Why = turn.Replaced.IsCancellationRequested
                    ? "another computation that you asked for took its place"
                    : $"it took longer than {Longest.TotalMinutes:0} minutes; try fewer lines, or a machine with less to do",
            });
        }
    }

    private static Task SendAsync(EventStream stream, string name, long number, object document, CancellationToken cancellationToken) =>
        stream.SendAsync(name, number, JsonSerializer.SerializeToUtf8Bytes(document, document.GetType(), WebJson.Options), cancellationToken);
}
