using System.Security.Cryptography;
using System.Text;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// The events of many centers in one database. Several processes may take deliveries at once: what one center sends is taken one
/// delivery at a time, by a lock in the database.
/// </summary>
public sealed class PostgresChain : IChainInbox, IDisposable
{
    private readonly PostgresPlace _place;
    private readonly TimeProvider _clock;
    private readonly NpgsqlDataSource _source;
    private readonly ChainMonths _months = new();

    private PostgresChain(PostgresPlace place, TimeProvider clock)
    {
        _place = place;
        _clock = clock;
        _source = NpgsqlDataSource.Create(place.ForChain());
    }

    /// <summary>Server, port and database.</summary>
    public string Place => _place.Name;

    /// <summary>Opens a chain's database: missing tables are made, older ones brought up to date.</summary>
    /// <param name="place">Which database; it must exist.</param>
    /// <param name="clock">The time.</param>
    /// <exception cref="StoreUnavailableException">It cannot be reached, holds something else, or is newer than this program.</exception>
    public static PostgresChain Open(PostgresPlace place, TimeProvider clock)
    {
        try
        {
            using var connection = new NpgsqlConnection(place.ForWriting(ChainContext.Schema));
            connection.Open();
            PostgresSessionStore.CheckFlushes(connection, place);
            if (!PostgresSchema.IsCurrent(connection, ChainContext.Schema, place.Name, PostgresSchema.Known<ChainContext>()))
            {
                using var chain = PostgresDatabase.ChainOver(connection);
                chain.Database.Migrate();
            }
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(place.Name, exception);
        }

        return new PostgresChain(place, clock);
    }

    /// <summary>Adds a center.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>Its token, which is never seen again; null when there is a center of this name.</returns>
    public Task<string?> AddCenterAsync(string name, CancellationToken cancellationToken) => AskAsync<string?>(
        async chain =>
        {
            if (await chain.Centers.AnyAsync(center => center.Name == name, cancellationToken).ConfigureAwait(false))
            {
                return null;
            }

            var token = "center-" + RandomNumberGenerator.GetHexString(40, lowercase: true);
            chain.Centers.Add(new CenterRow { Name = name, TokenHash = HashOf(token), AddedAt = _clock.GetUtcNow() });
            await chain.SaveChangesAsync(cancellationToken).ConfigureAwait(false);
            return token;
        },
        cancellationToken);

    /// <summary>Takes a center's token back. What it sent stays.</summary>
    /// <returns>Whether there is such a center.</returns>
    public Task<bool> RevokeCenterAsync(string name, CancellationToken cancellationToken) => AskAsync(
        async chain => await chain.Centers.Where(center => center.Name == name)
            .ExecuteUpdateAsync(set => set.SetProperty(center => center.RevokedAt, _clock.GetUtcNow()), cancellationToken).ConfigureAwait(false) > 0,
        cancellationToken);

    /// <summary>All centers, by name.</summary>
    public Task<ValueList<CenterListing>> ListCentersAsync(CancellationToken cancellationToken) => AskAsync(
        async chain => (await (
            from center in chain.Centers.AsNoTracking()
            orderby center.Name
            select new CenterListing(
                center.Name, center.AddedAt, center.HeardAt, center.RevokedAt,
                chain.Sessions.Count(session => session.CenterId == center.Id),
                chain.Sessions.Where(session => session.CenterId == center.Id).Sum(session => session.Shots),
                chain.ErasedSessions.Count(erased => erased.CenterId == center.Id && erased.CenterDoneAt == null))).ToListAsync(cancellationToken).ConfigureAwait(false)).ToValueList(),
        cancellationToken);

    /// <summary>Says that bowlers of centers are one person.</summary>
    /// <param name="person">What the chain calls the person; made when new.</param>
    /// <param name="center">The center.</param>
    /// <param name="bowler">The bowler's name there.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>Whether there is such a bowler.</returns>
    public Task<bool> LinkAsync(string person, string center, string bowler, CancellationToken cancellationToken) => AskAsync(
        async chain =>
        {
            var key = NameKey.Of(bowler);
            var found = await (
                from row in chain.Bowlers
                join at in chain.Centers on row.CenterId equals at.Id
                where at.Name == center && row.Key == key
                select row).SingleOrDefaultAsync(cancellationToken).ConfigureAwait(false);
            if (found is null)
            {
                return false;
            }

            var known = await chain.People.SingleOrDefaultAsync(row => row.Name == person, cancellationToken).ConfigureAwait(false);
            if (known is null)
            {
                known = new PersonRow { Name = person };
                chain.People.Add(known);
                await chain.SaveChangesAsync(cancellationToken).ConfigureAwait(false);
            }

            found.PersonId = known.Id;
            await chain.SaveChangesAsync(cancellationToken).ConfigureAwait(false);
            return true;
        },
        cancellationToken);

    /// <inheritdoc/>
    public Task<ChainCenter?> FindCenterAsync(string token, CancellationToken cancellationToken)
    {
        var hash = HashOf(token);
        return AskAsync(
            chain => chain.Centers.AsNoTracking().Where(center => center.TokenHash == hash && center.RevokedAt == null)
                .Select(center => new ChainCenter(center.Id, center.Name)).SingleOrDefaultAsync(cancellationToken),
            cancellationToken);
    }

    /// <inheritdoc/>
    public Task<HaveAnswer> HaveAsync(ChainCenter center, HaveRequest request, CancellationToken cancellationToken) => AskAsync(
        async chain =>
        {
            List<string> ids = [.. request.Sessions];
            var have = await chain.Sessions.AsNoTracking().Where(session => session.CenterId == center.Id && ids.Contains(session.Id))
                .Select(session => new HavePosition(session.Id, session.LastSequence, false)).ToListAsync(cancellationToken).ConfigureAwait(false);
            have.AddRange(await chain.ErasedSessions.AsNoTracking().Where(erased => erased.CenterId == center.Id && ids.Contains(erased.SessionId))
                .Select(erased => new HavePosition(erased.SessionId, 0, true)).ToListAsync(cancellationToken).ConfigureAwait(false));
            var erase = await chain.ErasedSessions.AsNoTracking().Where(erased => erased.CenterId == center.Id && erased.CenterDoneAt == null)
                .OrderBy(erased => erased.SessionId).Select(erased => erased.SessionId).Take(SyncFormat.MostAsked).ToListAsync(cancellationToken).ConfigureAwait(false);
            await chain.Centers.Where(row => row.Id == center.Id)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.HeardAt, _clock.GetUtcNow()), cancellationToken).ConfigureAwait(false);
            return new HaveAnswer(SyncFormat.Messages, SyncFormat.Events, center.Name, have.ToValueList(), erase.ToValueList());
        },
        cancellationToken);

    /// <inheritdoc/>
    public async Task<DeliveryAnswer> TakeAsync(ChainCenter center, Delivery delivery, CancellationToken cancellationToken)
    {
        var read = delivery.Sessions.Select(ReadSession.Of).ToList();
        return await WithConnectionAsync(
            connection =>
            {
                foreach (var month in read.Select(session => session.Setup?.At).OfType<DateTimeOffset>())
                {
                    _months.Make(connection, month);
                }

                // By itself and at once: drills are the only rows that centers share, and whoever first brings one in a long delivery
                // would keep all others waiting who bring the same.
                foreach (var drill in read.Select(session => session.Delivered.Drill).OfType<DeliveredDrill>().DistinctBy(drill => drill.Hash))
                {
                    KeepDrill(connection, drill);
                }

                try
                {
                    return new DeliveryAnswer(Take(connection, center, read));
                }
                catch (PostgresException exception) when (PostgresFault.IsRefusedRow(exception) && read.Count > 1)
                {
                    // One session spoils it for all: let each stand for itself.
                    return new DeliveryAnswer(read.SelectMany(session => TakeAlone(connection, center, session)).ToValueList());
                }
                catch (PostgresException exception) when (PostgresFault.IsRefusedRow(exception))
                {
                    return new DeliveryAnswer([Refused(read[0], exception)]);
                }
            },
            cancellationToken).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public Task<ErasureAnswer> EraseAsync(ChainCenter center, ErasureRequest request, CancellationToken cancellationToken) =>
        WithConnectionAsync(
            connection =>
            {
                using var transaction = connection.BeginTransaction();
                LockCenter(connection, center.Id);
                var erased = ChainErasing.Erase(connection, center.Id, [.. request.Sessions], _clock.GetUtcNow(), centerDone: true);
                transaction.Commit();
                return new ErasureAnswer(erased);
            },
            cancellationToken);

    /// <inheritdoc/>
    public async Task<GroupsAnswer> TakeGroupsAsync(ChainCenter center, GroupsRequest request, CancellationToken cancellationToken)
    {
        var weeks = ChainGroups.WeeksOf(request);
        return await WithConnectionAsync(
            connection =>
            {
                using var transaction = connection.BeginTransaction();
                LockCenter(connection, center.Id);
                var unknown = ChainGroups.Take(connection, center.Id, request, weeks, DateOnly.FromDateTime(_clock.GetUtcNow().UtcDateTime));
                transaction.Commit();
                return new GroupsAnswer(unknown);
            },
            cancellationToken).ConfigureAwait(false);
    }

    /// <summary>
    /// Erases a bowler of a center, or a person at every center: here at once, at the centers when they are next heard of.
    /// </summary>
    /// <param name="center">The center; null for a person of the chain.</param>
    /// <param name="name">The bowler's name there, or the person's here.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>How many sessions; null when nobody is called so.</returns>
    public Task<int?> EraseBowlerAsync(string? center, string name, CancellationToken cancellationToken) => WithConnectionAsync<int?>(
        connection =>
        {
            using var chain = PostgresDatabase.ChainOver(connection);
            var key = center is null ? "" : NameKey.Of(name);
            var bowlers = center is null
                ? (from bowler in chain.Bowlers join person in chain.People on bowler.PersonId equals person.Id where person.Name == name select bowler).AsNoTracking().ToList()
                : (from bowler in chain.Bowlers join at in chain.Centers on bowler.CenterId equals at.Id where at.Name == center && bowler.Key == key select bowler).AsNoTracking().ToList();
            if (bowlers.Count == 0)
            {
                return null;
            }

            var erased = 0;
            foreach (var bowler in bowlers.OrderBy(bowler => bowler.CenterId))
            {
                using var transaction = connection.BeginTransaction();
                LockCenter(connection, bowler.CenterId);
                var sessions = chain.Sessions.AsNoTracking().Where(session => session.BowlerId == bowler.Id).Select(session => session.Id).ToList();
                erased += ChainErasing.Erase(connection, bowler.CenterId, sessions, _clock.GetUtcNow(), centerDone: false);
                transaction.Commit();
            }

            return erased;
        },
        cancellationToken);

    /// <summary>Any question to the tables.</summary>
    /// <exception cref="StoreUnavailableException">The database is away, or not well.</exception>
    public async Task<T> AskAsync<T>(Func<ChainContext, Task<T>> question, CancellationToken cancellationToken)
    {
        try
        {
            using var chain = PostgresDatabase.ChainOver(await _source.OpenConnectionAsync(cancellationToken).ConfigureAwait(false), owns: true);
            return await question(chain).ConfigureAwait(false);
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(_place.Name, exception);
        }
    }

    /// <summary>Closes the connections.</summary>
    public void Dispose() => _source.Dispose();

    internal static string HashOf(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    private static void LockCenter(NpgsqlConnection connection, int center)
    {
        using var command = new NpgsqlCommand("SELECT pg_advisory_xact_lock(hashtext('chain center'), $1)", connection);
        command.Parameters.Add(new NpgsqlParameter { Value = center });
        command.ExecuteNonQuery();
    }

    private static void KeepDrill(NpgsqlConnection connection, DeliveredDrill drill)
    {
        using var command = new NpgsqlCommand("INSERT INTO drills (hash, drill_id, name, json) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING", connection);
        foreach (var value in (ReadOnlySpan<string>)[drill.Hash, drill.DrillId, drill.Name, drill.Json])
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        try
        {
            command.ExecuteNonQuery();
        }
        catch (PostgresException exception) when (PostgresFault.IsRefusedRow(exception))
        {
            // Its sessions are refused, with words, when they come to it.
        }
    }

    private static DeliveredAnswer Refused(ReadSession session, PostgresException exception) =>
        new(session.Id, 0, false, $"the chain refuses this: {exception.MessageText}");

    private static ValueList<DeliveredAnswer> TakeAlone(NpgsqlConnection connection, ChainCenter center, ReadSession session)
    {
        try
        {
            return Take(connection, center, [session]);
        }
        catch (PostgresException exception) when (PostgresFault.IsRefusedRow(exception))
        {
            return [Refused(session, exception)];
        }
    }

    private static ValueList<DeliveredAnswer> Take(NpgsqlConnection connection, ChainCenter center, List<ReadSession> sessions)
    {
        using var transaction = connection.BeginTransaction();
        LockCenter(connection, center.Id);
        var keeper = new ChainKeeper(connection, center.Id);
        var answers = sessions.Select(keeper.Take).ToValueList();
        transaction.Commit();
        return answers;
    }

    private async Task<T> WithConnectionAsync<T>(Func<NpgsqlConnection, T> work, CancellationToken cancellationToken)
    {
        try
        {
            // What was begun is seen through: whoever gave up waiting sends it again.
            await using var connection = await _source.OpenConnectionAsync(cancellationToken).ConfigureAwait(false);
            return await Task.Run(() => work(connection), CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception exception) when (PostgresFault.IsWorlds(exception))
        {
            throw PostgresFault.For(_place.Name, exception);
        }
    }
}
