using AimTrainer.Domain;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Takes sessions out of the record for good. The only thing that ever takes something out of a log.</summary>
internal static class Erasing
{
    /// <summary>Does it in the transaction that the context is in.</summary>
    public static void Erase(RecordContext record, ValueList<string> sessionIds)
    {
        foreach (var ids in sessionIds.Chunk(500))
        {
            var sessions = record.Sessions.Where(session => ids.AsEnumerable().Contains(session.Id)).Select(session => new { session.Key, session.BowlerId }).ToList();
            var keys = sessions.ConvertAll(session => session.Key);
            var bowlers = sessions.Select(session => session.BowlerId).Distinct().ToList();
            record.ShotTargets.Where(target => keys.Contains(target.SessionKey)).ExecuteDelete();
            record.GradedShots.Where(shot => keys.Contains(shot.SessionKey)).ExecuteDelete();
            record.LogSteps.Where(step => keys.Contains(step.SessionKey)).ExecuteDelete();
            record.Sessions.Where(session => keys.Contains(session.Key)).ExecuteDelete();
            var gone = bowlers.Where(bowler => !record.Sessions.Any(session => session.BowlerId == bowler)).ToList();
            var balls = record.Balls.Where(ball => gone.Contains(ball.BowlerId)).Select(ball => ball.Id).ToList();
            record.BallSurfaces.Where(surface => balls.Contains(surface.BallId)).ExecuteDelete();
            record.Balls.Where(ball => gone.Contains(ball.BowlerId)).ExecuteDelete();
            record.Bowlers.Where(bowler => gone.Contains(bowler.Id)).ExecuteDelete();
        }
    }
}
