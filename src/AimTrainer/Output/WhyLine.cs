using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>The shots of a session that were thrown at the same places, whatever their width was.</summary>
/// <param name="Name">What the drill calls it.</param>
/// <param name="Line">The places.</param>
/// <param name="Shots">The shots by their number in the session.</param>
internal sealed record WhyLine(string Name, string Line, IReadOnlyList<(int Number, ObservedShot Shot)> Shots)
{
    /// <summary>The lines of a session, in the order first thrown at. Void shots are left out.</summary>
    public static IReadOnlyList<WhyLine> Of(SessionSetup setup, SessionRecord record)
    {
        var shots = record.Blocks.AsEnumerable()
            .SelectMany(block => block.Shots.Select(shot => (Block: block.Began.Name, shot.Shot)))
            .Where(shot => shot.Shot.VoidReason is null && shot.Shot.Targets.Count > 0)
            .Select((shot, i) => (shot.Shot.Number, shot.Shot.Aim, Shot: ObservedShot.Of(shot.Shot, setup, shot.Block, i + 1)));
        return
        [
            .. shots.GroupBy(shot => shot.Shot.Line)
                .Select(line => new WhyLine(line.First().Aim, line.Key, [.. line.Select(shot => (shot.Number, shot.Shot))])),
        ];
    }

    /// <summary>The first pass over the shots.</summary>
    public LineStudy Study(AccuracySettings settings)
    {
        var study = new LineStudy(settings);
        foreach (var (_, shot) in Shots)
        {
            study.Add(shot);
        }

        study.Close();
        return study;
    }
}
