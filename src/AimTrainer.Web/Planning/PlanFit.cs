using AimTrainer.Domain;
using AimTrainer.Motion;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>A wish to fit a lane to a session's shots.</summary>
/// <param name="Session">The session.</param>
/// <param name="Lane">The lane's sheet.</param>
/// <param name="Ball">The ball that was thrown.</param>
/// <param name="Usual">The bowler's usual throw, for what was not measured; null when it is not given.</param>
/// <param name="Settings">How.</param>
internal sealed record PlanFit(string Session, LaneSurface Lane, Ball Ball, AimBowler? Usual, FitSettings Settings)
{
    private const int LongestId = 100;

    public static PlanFit? Read(JsonFile file, ObjectReader body)
    {
        var session = body.Text("session", LongestId);
        var (lane, ball) = (PlanReader.Lane(file, body), PlanReader.Ball(body));
        var usual = body.OptionalObject("bowler") is { } bowler ? AimBowlerReader.Part(bowler) : null;
        var noise = body.OptionalNumber("noiseBoards", 0.01, LaneFit.MostNoise);
        var keep = new List<LaneParameter>();
        foreach (var (parameter, name) in new[] { (LaneParameter.OilFriction, "keepOil"), (LaneParameter.DryFriction, "keepDry"), (LaneParameter.PatternFeet, "keepPattern") })
        {
            if (body.OptionalFlag(name) == true)
            {
                keep.Add(parameter);
            }
        }

        body.Done();
        return session is null || lane is null || ball is null ? null
            : new PlanFit(session, lane.Sheet, ball, usual, new FitSettings { NoiseBoards = noise, Keep = keep.ToValueList() });
    }

    public IResult Answer(PlanWork work, TimeProvider clock, Hand hand, IReadOnlyList<GradedShot> shots)
    {
        var input = FitShots.Of(shots.Select(shot => (shot.Shot, hand, shot.Number)), Usual, "take the throw of the plan for what was not measured");
        return input.Shots.Count == 0
            ? Problems.Refused(input.LeftOut.Count == 0 ? "this session holds no shot"
                : $"no shot of this session can be fitted; shot {input.LeftOut[0].Line}: {input.LeftOut[0].Why}")
            : new PlanStream(work, clock, (_, ct) => FitAnswer.Of(LaneFit.Fit(Lane, Ball, [.. input.Shots.Select(one => one.Shot)], Settings, ct), input));
    }
}
