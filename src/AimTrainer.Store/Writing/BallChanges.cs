using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Store;

/// <summary>Keeps what is said of balls.</summary>
internal static class BallChanges
{
    /// <summary>Keeps what is known of a ball, in place of what was known.</summary>
    public static void Keep(RecordContext record, BallDetails details)
    {
        var ball = NewSessions.BallOf(record, NewSessions.BowlerOf(record, details.Bowler), details.Name);
        ball.Surface = details.Surface;
        ball.WeightPounds = details.WeightPounds;
        ball.GyrationInches = details.RadiusOfGyration?.Value;
        ball.DifferentialInches = details.Differential?.Value;
        ball.Layout = details.Layout;
        ball.GamesSinceSurfaceWork = details.GamesSinceSurfaceWork;
        record.SaveChanges();
    }

    /// <summary>Adds to the history of a ball's surface.</summary>
    /// <returns>Whether there is such a ball.</returns>
    public static bool Add(RecordContext record, Work.Surface work)
    {
        var (bowlerKey, ballKey) = (NameKey.Of(work.Bowler), NameKey.Of(work.BallName));
        var ball = (
            from row in record.Balls
            join owner in record.Bowlers on row.BowlerId equals owner.Id
            where owner.Key == bowlerKey && row.Key == ballKey
            select row).SingleOrDefault();
        if (ball is null)
        {
            return false;
        }

        var entry = work.Entry;
        record.BallSurfaces.Add(new BallSurfaceRow
        {
            BallId = ball.Id,
            At = entry.At,
            Kind = entry.Kind,
            Finish = entry.Finish,
            Roughness = entry.Roughness,
            RoughnessUnit = entry.RoughnessUnit,
            Games = ball.GamesSinceSurfaceWork,
            Note = entry.Note,
        });
        if (entry.Kind == BallSurfaceKind.Work)
        {
            ball.GamesSinceSurfaceWork = 0;
            ball.Surface = entry.Finish ?? ball.Surface;
        }

        record.SaveChanges();
        return true;
    }
}
