using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports;

/// <summary>A session's figures: how accurate it was, and where its misses came from. Shots that were taken out do not count.</summary>
/// <param name="Session">The session.</param>
/// <param name="Bowler">Whose.</param>
/// <param name="Simulated">Whether every shot is invented.</param>
/// <param name="Drill">The drill's id.</param>
/// <param name="Hand">The hand; boards count from its edge.</param>
/// <param name="NoiseBoards">Standard deviation of the error of each measured board; null when it is not known.</param>
/// <param name="Accuracy">Accuracy by target, line and group.</param>
/// <param name="Lines">Each line that was thrown at, in the order first thrown at.</param>
public sealed record SessionFigures(
    string Session, string Bowler, bool Simulated, string Drill, Hand Hand, double? NoiseBoards, AccuracyReport Accuracy, ValueList<LineFigures> Lines)
{
    /// <summary>The figures of a session, over or under way.</summary>
    /// <param name="setup">The session.</param>
    /// <param name="record">What was thrown so far.</param>
    /// <param name="noiseBoards">The sensor's noise, when it is known.</param>
    /// <param name="sides">How sides are called in the sentences.</param>
    public static SessionFigures Of(SessionSetup setup, SessionRecord record, double? noiseBoards = null, SideNames sides = SideNames.InsideOutside)
    {
        var settings = new AccuracySettings { Lane = setup.Lane, NoiseBoards = noiseBoards };
        var words = new MissWords(setup.Lane, setup.Hand, sides);
        var accuracy = new AccuracyAccumulator(settings);
        foreach (var (_, shot) in SessionLine.ShotsOf(setup, record))
        {
            accuracy.Add(shot);
        }

        return new SessionFigures(
            setup.SessionId,
            setup.Bowler,
            setup.Simulated,
            setup.DrillId,
            setup.Hand,
            noiseBoards,
            accuracy.Result(),
            SessionLine.Of(setup, record).Select(line => LineFigures.Of(line, settings, words)).ToValueList());
    }
}
