using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>Keeps a new session with whatever it brings along, all or nothing.</summary>
internal static class NewSessions
{
    /// <summary>Writes it in the transaction that the context is in.</summary>
    /// <param name="record">The tables, over the writer's connection.</param>
    /// <param name="work">The session.</param>
    /// <exception cref="InvalidOperationException">There is a session with this id.</exception>
    public static void Add(RecordContext record, Work.NewSession work)
    {
        var setup = work.Setup;
        if (record.Sessions.Any(session => session.Id == setup.SessionId))
        {
            throw new InvalidOperationException($"there is a session \"{setup.SessionId}\" already");
        }

        var bowler = BowlerOf(record, setup.Bowler);
        var ballId = string.IsNullOrWhiteSpace(setup.Ball) ? (long?)null : BallOf(record, bowler, setup.Ball).Id;
        foreach (var chosen in setup.Balls)
        {
            BallOf(record, bowler, chosen.Name);
        }

        if (!record.Drills.Any(drill => drill.Hash == work.Drill.Hash))
        {
            record.Drills.Add(new DrillRow
            {
                Hash = work.Drill.Hash,
                DrillId = work.Drill.Script.Id,
                Name = work.Drill.Script.Name,
                Json = work.Drill.Json,
            });
        }

        record.Sessions.Add(new SessionRow
        {
            Id = setup.SessionId,
            Station = setup.Station,
            StartedAt = setup.At,
            BowlerId = bowler.Id,
            Hand = setup.Hand,
            BallId = ballId,
            DrillHash = work.Drill.Hash,
            LaneName = setup.Lane.Name,
            SetupJson = work.SetupJson,
            Simulated = setup.Simulated,
        });
        record.SaveChanges();
    }

    /// <summary>The bowler of a name, made when there is none.</summary>
    public static BowlerRow BowlerOf(RecordContext record, string name)
    {
        var key = NameKey.Of(name);
        if (record.Bowlers.SingleOrDefault(bowler => bowler.Key == key) is { } known)
        {
            return known;
        }

        var bowler = new BowlerRow { Name = name.Trim(), Key = key };
        record.Bowlers.Add(bowler);
        record.SaveChanges();
        return bowler;
    }

    /// <summary>A bowler's ball of a name, made when there is none.</summary>
    public static BallRow BallOf(RecordContext record, BowlerRow bowler, string name)
    {
        var key = NameKey.Of(name);
        if (record.Balls.SingleOrDefault(ball => ball.BowlerId == bowler.Id && ball.Key == key) is { } known)
        {
            return known;
        }

        var ball = new BallRow { BowlerId = bowler.Id, Name = name.Trim(), Key = key };
        record.Balls.Add(ball);
        record.SaveChanges();
        return ball;
    }
}
