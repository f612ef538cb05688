using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>The drill file of an advice.</summary>
internal static class AimDrill
{
    /// <summary>The text of the shipped drill that trains what is worth most, with the target of the advice filled in.</summary>
    /// <param name="advice">The advice, whose line reaches the downlane distance.</param>
    /// <param name="bowler">The bowler.</param>
    /// <param name="arrowsFeet">Where the arrows are.</param>
    /// <param name="downlaneFeet">Where the downlane target is.</param>
    /// <param name="file">The file that is to be written; its name becomes the id.</param>
    public static string Of(AimAdvice advice, AimBowler bowler, double arrowsFeet, double downlaneFeet, string file)
    {
        if (!double.IsFinite(advice.ArrowsBoard) || !double.IsFinite(advice.DownlaneBoard))
        {
            throw new UserException($"{file}: not written: the best line ends in a gutter before its targets");
        }

        var line = new AimedLine(
            new Crossing(Feet.FromMeasurement(arrowsFeet), Board.FromMeasurement(advice.ArrowsBoard)),
            new Crossing(Feet.FromMeasurement(downlaneFeet), Board.FromMeasurement(advice.DownlaneBoard)),
            new Baseline
            {
                Speed = new BallSpeed(MilesPerHour.FromMilesPerHour(bowler.SpeedMph), SpeedPlace.Release),
                Revs = Rpm.FromRpm(bowler.RevsRpm),
                LaunchAngle = Degrees.FromDegrees(advice.Best.Line.LaunchAngleDegrees),
                Laydown = Board.FromMeasurement(advice.Best.Line.LaydownBoard),
            });
        var shipped = new DrillLibrary(null).Read(PractiseDrill.IdFor(advice.Practise));
        var read = AimedDrill.Of(shipped, Path.GetFileNameWithoutExtension(file), file, line);
        return read.Value?.Json ?? throw UserException.Of(read.Problems);
    }
}
