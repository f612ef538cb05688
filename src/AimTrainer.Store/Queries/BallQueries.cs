using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;

namespace AimTrainer.Store;

/// <summary>Questions about balls, the same for every database.</summary>
public static class BallQueries
{
    /// <summary>Balls by bowler and name, with their surface history.</summary>
    /// <param name="record">The record.</param>
    /// <param name="bowler">Only this bowler's; null for all.</param>
    /// <param name="ball">Only the ball of this name; null for all.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public static async Task<ValueList<BallRecord>> ListBallsAsync(this RecordContext record, string? bowler, string? ball, CancellationToken cancellationToken)
    {
        var (bowlerKey, ballKey) = (bowler is null ? null : NameKey.Of(bowler), ball is null ? null : NameKey.Of(ball));
        var balls = await (
            from row in record.Balls.AsNoTracking()
            join owner in record.Bowlers on row.BowlerId equals owner.Id
            where (bowlerKey == null || owner.Key == bowlerKey) && (ballKey == null || row.Key == ballKey)
            orderby owner.Name, row.Name
            select new { Ball = row, Bowler = owner.Name }).ToListAsync(cancellationToken).ConfigureAwait(false);
        var ids = balls.ConvertAll(one => one.Ball.Id);
        var surfaces = (await record.BallSurfaces.AsNoTracking().Where(surface => ids.Contains(surface.BallId))
            .OrderByDescending(surface => surface.At).ThenByDescending(surface => surface.Id).ToListAsync(cancellationToken).ConfigureAwait(false))
            .ToLookup(surface => surface.BallId);
        var thrown = (await (
            from shot in record.GradedShots.AsNoTracking()
            where shot.BallId != null && ids.Contains(shot.BallId.Value) && shot.VoidReason == null
            group shot by shot.BallId!.Value into shots
            select new { Ball = shots.Key, Shots = shots.Count(), Last = shots.Max(shot => shot.At) }).ToListAsync(cancellationToken).ConfigureAwait(false))
            .ToDictionary(shots => shots.Ball);
        return balls.Select(one => new BallRecord(
            Details(one.Ball, one.Bowler),
            thrown.TryGetValue(one.Ball.Id, out var shots) ? shots.Shots : 0,
            shots?.Last,
            surfaces[one.Ball.Id].Select(surface => new BallSurface(
                surface.At, surface.Kind, surface.Finish, surface.Roughness, surface.RoughnessUnit, surface.Games, surface.Note)).ToValueList())).ToValueList();
    }

    private static BallDetails Details(BallRow row, string bowler) => new()
    {
        Bowler = bowler,
        Name = row.Name,
        Surface = row.Surface,
        WeightPounds = row.WeightPounds,
        RadiusOfGyration = row.GyrationInches is { } gyration ? Inches.FromInches(gyration) : null,
        Differential = row.DifferentialInches is { } differential ? Inches.FromInches(differential) : null,
        Layout = row.Layout,
        GamesSinceSurfaceWork = row.GamesSinceSurfaceWork,
    };
}
