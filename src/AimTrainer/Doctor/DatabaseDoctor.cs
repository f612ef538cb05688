using System.Globalization;
using AimTrainer.Sessions;
using AimTrainer.Store.Postgres;

namespace AimTrainer.Doctor;

/// <summary>Looks at a record in a PostgreSQL database: whether it is reached, its version, its tables, the right to write, its clock. Changes nothing there.</summary>
/// <param name="place">The database.</param>
/// <param name="clock">This machine's time.</param>
internal sealed class DatabaseDoctor(PostgresPlace place, TimeProvider clock)
{
    /// <summary>Clocks that are kept by the network are much nearer to one another than the first; by the second, days are mixed up around midnight.</summary>
    private static readonly TimeSpan WarnApart = TimeSpan.FromSeconds(5), FailApart = TimeSpan.FromMinutes(10);

    /// <summary>When the newest session of the record began; null when that is not known.</summary>
    public DateTimeOffset? NewestSession { get; private set; }

    public async Task<IReadOnlyList<DoctorLine>> LookAsync(CancellationToken cancellationToken)
    {
        PostgresHealth health;
        try
        {
            health = await PostgresHealth.OfAsync(place, clock, cancellationToken).ConfigureAwait(false);
        }
        catch (StoreUnavailableException exception)
        {
            return [DoctorLine.Fail("database", exception.Message, "see the message; until then no session can be kept, and none is started")];
        }

        NewestSession = health.NewestSession;
        return
        [
            Server(place.Name, health),
            Tables(health),
            health.WritingProblem is { } why ? DoctorLine.Fail("right to write", why, "then look again with: aimtrainer doctor --record ...")
                : DoctorLine.Ok("right to write", "this user may write there"),
            Clock(health),
        ];
    }

    /// <summary>Whether the server is of a version that may hold a record.</summary>
    internal static DoctorLine Server(string place, PostgresHealth health) => health.IsOldServer
        ? DoctorLine.Fail("database", $"{place} is reached: PostgreSQL {health.Server}", $"use version {PostgresHealth.LeastVersion} or a newer one")
        : DoctorLine.Ok("database", $"{place} is reached: PostgreSQL {health.Server}");

    /// <summary>Whether the tables are those of this program.</summary>
    internal static DoctorLine Tables(PostgresHealth health) =>
        health.IsCurrent ? DoctorLine.Ok("tables", $"of this version ({health.Version})")
        : health.Applied == 0 ? DoctorLine.Warn("tables", "none yet", "nothing: the first start of the host makes them")
        : DoctorLine.Warn(
            "tables", string.Create(CultureInfo.InvariantCulture, $"of an older version ({health.Version}); {health.Known - health.Applied} to come"),
            "make a copy with pg_dump first; the next start of the host updates them");

    private static DoctorLine Clock(PostgresHealth health)
    {
        // What the question's own time leaves open is given in favour of the clocks.
        var apart = health.ClockAhead.Duration() - health.ClockWithin;
        var found = string.Create(
            CultureInfo.InvariantCulture,
            $"{health.ClockAhead.Duration().TotalSeconds:0.0} s {(health.ClockAhead < TimeSpan.Zero ? "behind" : "ahead of")} this machine's (within {health.ClockWithin.TotalSeconds:0.0} s)");
        return apart > FailApart ? DoctorLine.Fail("database's clock", found, "set the clock that is wrong, and let both systems keep theirs by the network: records carry the time")
            : apart > WarnApart ? DoctorLine.Warn("database's clock", found, "let both systems keep their clocks by the network")
            : DoctorLine.Ok("database's clock", found);
    }
}
