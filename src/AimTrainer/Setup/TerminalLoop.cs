using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Takes shots and a coach's words from the terminal or a pipe, a line each, until the session or the input ends.</summary>
internal static class TerminalLoop
{
    /// <returns>Whether the input ended before the session was over and before anybody said to leave: another feed may go on.</returns>
    public static async Task<bool> RunAsync(UserConsole console, LiveSession live, ISessionView view, CancellationToken cancellationToken)
    {
        var person = console.PersonTypes;
        if (person)
        {
            view.Notice("Type where the ball crossed, as 10.5 or 10.5/7 for a line; help lists the other words.");
            if (live.Station.Snapshot is { Drill.AsksHowArmFeels: true, NextNumber: 1 })
            {
                view.Notice("How does the arm feel? Your answer is noted. If it hurts, do not throw; a doctor or therapist can help, this program cannot.");
                var answer = await ReadLineAsync(console, cancellationToken).ConfigureAwait(false);
                var words = $"arm before the first shot: {(string.IsNullOrWhiteSpace(answer) ? "not said" : answer.Trim())}";
                await live.FollowAsync(new SessionInput.TakeNote(live.Clock.GetUtcNow(), words)).ConfigureAwait(false);
            }
        }

        while (live.Station.Snapshot.Phase != SessionPhase.Ended)
        {
            if (await ReadLineAsync(console, cancellationToken).ConfigureAwait(false) is not { } line)
            {
                return true;
            }

            if (!await TakeAsync(line, live, view).ConfigureAwait(false))
            {
                return false;
            }
        }

        if (person)
        {
            await TakeCorrectionsAsync(console, live, view, cancellationToken).ConfigureAwait(false);
        }

        return false;
    }

    /// <summary>The last shot can be a misreading too: a person may still void, correct and note until an empty line.</summary>
    private static async Task TakeCorrectionsAsync(UserConsole console, LiveSession live, ISessionView view, CancellationToken cancellationToken)
    {
        view.Notice("The drill is done. Void or correct a shot, or add a note; Enter closes the session.");
        while (await ReadLineAsync(console, cancellationToken).ConfigureAwait(false) is { } line && line.Trim().Length > 0
            && await TakeAsync(line, live, view).ConfigureAwait(false))
        {
            // Each line has been followed, or refused in words.
        }
    }

    /// <returns>Whether to go on.</returns>
    private static async Task<bool> TakeAsync(string line, LiveSession live, ISessionView view)
    {
        var now = live.Station.Snapshot;
        switch (TypedShots.Parse(line, now.Shown, now.Setup!.Lane))
        {
            case TypedLine.Throw thrown:
                await live.FollowAsync(new SessionInput.ShotThrown(live.Clock.GetUtcNow(), thrown.Shot)).ConfigureAwait(false);
                return true;
            case TypedLine.Wrong wrong:
                view.Notice($"found {wrong.Found}; allowed: {wrong.Allowed}");
                return true;
            case TypedLine.Command words:
                return await ActAsync(CoachWords.Parse(words.Text, now, live.Clock.GetUtcNow()), live, view).ConfigureAwait(false);
            default:
                return true;
        }
    }

    private static async Task<bool> ActAsync(CoachLine line, LiveSession live, ISessionView view)
    {
        switch (line)
        {
            case CoachLine.Act act:
                await live.FollowAsync(act.Input).ConfigureAwait(false);
                return true;
            case CoachLine.Clear:
                live.ClearDisplays?.Invoke();
                view.Notice(live.ClearDisplays is null
                    ? "clear: this session opened no display; in a display of its own, Backspace clears the result"
                    : "the last result is cleared from the displays; the record stays as it is");
                return true;
            case CoachLine.Leave:
                return false;
            case CoachLine.Help:
                foreach (var help in CoachWords.Help)
                {
                    view.Notice(help);
                }

                return true;
            case CoachLine.Wrong wrong:
                view.Notice(wrong.Why);
                return true;
            default:
                throw new InvalidOperationException($"unknown line {line}");
        }
    }

    // A terminal's reader blocks even when asked to wait: the session must be able to end without a last key press.
    private static Task<string?> ReadLineAsync(UserConsole console, CancellationToken cancellationToken) =>
        Task.Run(console.In.ReadLine, cancellationToken).WaitAsync(cancellationToken);
}
