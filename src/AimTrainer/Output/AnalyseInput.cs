using System.Globalization;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>Goes through the shots of a file: each shot once, one bowler's only, each with its targets.</summary>
/// <param name="targets">What the shots are held against, nearest first.</param>
/// <param name="bowler">Whose shots; null when the file names nobody.</param>
internal sealed class AnalyseInput(IReadOnlyList<AnalyseTarget> targets, string? bowler)
{
    private readonly DuplicateShots _seen = new();
    private string? _session;
    private int _numberInSession;

    /// <summary>Shots taken.</summary>
    public int Shots { get; private set; }

    /// <summary>Shots that were there before.</summary>
    public int Repeated { get; private set; }

    /// <summary>Shots of other bowlers, left out.</summary>
    public int OfOthers { get; private set; }

    /// <summary>What could not be read.</summary>
    public int Problems { get; private set; }

    /// <summary>The shots that count, with their line in the file.</summary>
    /// <param name="items">What the file holds.</param>
    /// <param name="report">Told of what could not be read.</param>
    public IEnumerable<(ObservedShot Shot, int Line)> Read(IEnumerable<FeedItem> items, Action<FileProblem> report)
    {
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable unreadable)
            {
                Problems++;
                report(unreadable.Problem);
                continue;
            }

            var read = (FeedItem.ShotRead)item;
            if (read.Bowler is not null && bowler is not null && !string.Equals(read.Bowler, bowler, StringComparison.OrdinalIgnoreCase))
            {
                OfOthers++;
                continue;
            }

            if (!_seen.Add(read.Shot))
            {
                Repeated++;
                continue;
            }

            Shots++;
            var session = read.Shot.Time?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            _numberInSession = session == _session ? _numberInSession + 1 : 1;
            _session = session;
            var observed = targets.Select(target => ObservedTarget.At(target.Name, read.Shot, target.Centre, target.Distance, target.Width)).ToValueList();
            yield return (new ObservedShot(read.Shot, observed) { NumberInSession = _numberInSession, Session = session, Ball = read.Shot.Ball }, read.Line);
        }
    }
}
