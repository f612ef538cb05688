using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>The shots of a session that were thrown at the same places, whatever their width was.</summary>
/// <param name="Name">What the drill calls it.</param>
/// <param name="Line">The places.</param>
/// <param name="Shots">The shots by their number in the session.</param>
public sealed record SessionLine(string Name, string Line, IReadOnlyList<(int Number, ObservedShot Shot)> Shots)
{
    /// <summary>The lines of a session, in the order first thrown at. Void shots are left out.</summary>
    public static IReadOnlyList<SessionLine> Of(SessionSetup setup, SessionRecord record)
    {
        var aims = record.Blocks.AsEnumerable().SelectMany(block => block.Shots).ToDictionary(shot => shot.Shot.Number, shot => shot.Shot.Aim);
        return
        [
            .. ShotsOf(setup, record).GroupBy(shot => shot.Shot.Line)
                .Select(line => new SessionLine(aims[line.First().Number], line.Key, [.. line])),
        ];
    }

    /// <summary>The shots of a session that count and had a target, with their numbers in it, in the order thrown.</summary>
    public static IEnumerable<(int Number, ObservedShot Shot)> ShotsOf(SessionSetup setup, SessionRecord record) => record.Blocks.AsEnumerable()
        .SelectMany(block => block.Shots.Select(shot => (Block: block.Began.Name, shot.Shot)))
        .Where(shot => shot.Shot.VoidReason is null && shot.Shot.Targets.Count > 0)
        .Select((shot, i) => (shot.Shot.Number, ObservedShot.Of(shot.Shot, setup, shot.Block, i + 1)));

    /// <summary>Studies the shots, with the plan that is learned without gross misses.</summary>
    public LineStudy Study(AccuracySettings settings)
    {
        var study = new LineStudy(settings);
        foreach (var (_, shot) in Shots)
        {
            study.Add(shot);
        }

        study.Close();
        study.SetAsideGross(Shots.Select(shot => shot.Shot));
        return study;
    }
}
