using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>
/// How a shot changes the oil: it takes a share of it along its track and less to both sides. A choice, not a finding: no published
/// figure was found, so a lane has none unless its file says so. Oil that a ball carries down the lane is not in it.
/// </summary>
/// <param name="TakenShare">Share of the oil that one shot takes in the middle of its track, 0 to 1.</param>
/// <param name="TrackBoards">Distance from there, in boards, at which it takes 61 % of that (one standard deviation); more than 0.</param>
public sealed record Wear(double TakenShare, double TrackBoards)
{
    /// <summary>Half the width of a track when a file does not say.</summary>
    public const double UsualTrackBoards = 1.5;

    /// <summary>Longest part of the pattern that one track wears evenly, feet.</summary>
    private const double PartFeet = 2;

    /// <summary>The lane after a shot. The pattern is cut into parts of at most 2 ft, each worn where the ball crossed its ends.</summary>
    /// <param name="lane">The lane before it.</param>
    /// <param name="path">The shot.</param>
    public LaneSurface After(LaneSurface lane, BallPath path)
    {
        var worn = new List<OilStretch>();
        foreach (var stretch in lane.Oil)
        {
            if (stretch.IsDry)
            {
                worn.Add(stretch);
                continue;
            }

            var parts = (int)Math.Ceiling((stretch.EndFeet - stretch.StartFeet) / PartFeet);
            var cuts = Enumerable.Range(0, parts + 1)
                .Select(i => i == parts ? stretch.EndFeet : stretch.StartFeet + ((stretch.EndFeet - stretch.StartFeet) * i / parts)).ToList();
            worn.AddRange(cuts.Zip(cuts.Skip(1), (from, to) => new OilStretch(from, to, Left(stretch, from, path), Left(stretch, to, path))));
        }

        return lane.With(worn.ToValueList());
    }

    private ValueList<double> Left(OilStretch stretch, double feet, BallPath path)
    {
        var track = feet >= path.Release.LaydownFeet && feet <= path.End.EndFeet ? path.At(feet).Board : double.NaN;
        var fromRight = path.Release.Hand == Hand.Right ? track : LaneProfile.BoardCount + 1 - track;
        return Enumerable.Range(1, LaneProfile.BoardCount).Select(board =>
        {
            var away = (board - fromRight) / TrackBoards;
            var taken = double.IsNaN(track) ? 0 : TakenShare * Math.Exp(-away * away / 2);
            return stretch.At(feet, board) * (1 - taken);
        }).ToValueList();
    }
}
