using System.Runtime.CompilerServices;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>Shots typed at the terminal, one a line. They carry no time: the same boards twice are two shots.</summary>
/// <param name="input">Where lines come from; a line that never comes holds one thread.</param>
/// <param name="shown">What is aimed at now, or null when nothing is shown.</param>
/// <param name="lane">Where the arrows and downlane marks lie.</param>
/// <param name="command">Gets every line that begins with a letter or a colon; without it such a line is unreadable.</param>
public sealed class TypedShotFeed(TextReader input, Func<Aim?> shown, LaneProfile lane, Action<string>? command = null) : IShotFeed
{
    /// <inheritdoc/>
    public string Name => "terminal";

    /// <inheritdoc/>
    public async IAsyncEnumerable<FeedItem> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        for (var number = 1; ; number++)
        {
            // A terminal's reader blocks even when asked to wait: the session must be able to end without a last key press.
            var line = await Task.Run(input.ReadLine, cancellationToken).WaitAsync(cancellationToken).ConfigureAwait(false);
            if (line is null)
            {
                yield break;
            }

            switch (TypedShots.Parse(line, shown(), lane))
            {
                case TypedLine.Throw thrown:
                    yield return new FeedItem.ShotRead(thrown.Shot, null, null, number);
                    break;
                case TypedLine.Command words when command is not null:
                    command(words.Text);
                    break;
                case TypedLine.Command words:
                    yield return Unreadable(number, FoundText.Quoted(words.Text), "a shot such as 10.5 or 10.5/7");
                    break;
                case TypedLine.Wrong wrong:
                    yield return Unreadable(number, wrong.Found, wrong.Allowed);
                    break;
            }
        }
    }

    private FeedItem.Unreadable Unreadable(int line, string found, string allowed) => new(new FileProblem(Name, line, "", found, allowed));
}
