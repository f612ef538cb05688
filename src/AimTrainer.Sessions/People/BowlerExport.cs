using System.IO.Compression;
using System.Text;
using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>Everything that is kept of a bowler, as one zip file for the bowler.</summary>
/// <param name="store">The record.</param>
/// <param name="documents">How a session is written for other programs.</param>
/// <param name="people">What was agreed.</param>
/// <param name="groups">The groups.</param>
public sealed class BowlerExport(ISessionStore store, ISessionDocuments documents, PeopleRegister people, GroupRegister groups)
{
    /// <summary>
    /// Writes the zip: <c>bowler.json</c> (what was agreed, groups, how many sessions), and of each session the document, the shots as CSV
    /// and the log to the last step.
    /// </summary>
    /// <returns>How many sessions; null when nothing is kept of a bowler of this name, and nothing was written.</returns>
    public async Task<int?> WriteAsync(string bowler, Stream to, CancellationToken cancellationToken)
    {
        var sessions = await store.ListAsync(new SessionFilter { Bowler = bowler, Limit = int.MaxValue }, cancellationToken).ConfigureAwait(false);
        var memberships = groups.All.AsEnumerable().Where(group => group.Find(bowler) is not null).ToList();
        var consent = people.Find(bowler);
        if (sessions.Count == 0 && memberships.Count == 0 && consent is null)
        {
            return null;
        }

        var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        await using (zip.ConfigureAwait(false))
        {
            var about = new
            {
                Bowler = sessions.Count > 0 ? sessions[0].Bowler : bowler,
                Agreed = consent,
                Groups = memberships.Select(group => new { group.Name, group.ProgramId, group.Starts, group.Find(bowler)!.Level, group.Find(bowler)!.Station }),
                Sessions = sessions.Count,
            };
            await AddAsync(zip, "bowler.json", JsonSerializer.Serialize(about, DomainJson.Options), cancellationToken).ConfigureAwait(false);
            foreach (var listing in sessions)
            {
                await AddSessionAsync(zip, listing.SessionId, cancellationToken).ConfigureAwait(false);
            }
        }

        return sessions.Count;
    }

    private async Task AddSessionAsync(ZipArchive zip, string id, CancellationToken cancellationToken)
    {
        if (await store.FindAsync(id, cancellationToken).ConfigureAwait(false) is not { } stored)
        {
            return;
        }

        var record = new SessionRecordBuilder();
        var log = new StringBuilder();
        await foreach (var entry in store.ReadLogAsync(id, cancellationToken).ConfigureAwait(false))
        {
            record.Add(entry.Events);
            log.Append(JsonSerializer.Serialize(entry, DomainJson.Options)).Append('\n');
        }

        await AddAsync(zip, $"sessions/{id}/log.jsonl", log.ToString(), cancellationToken).ConfigureAwait(false);
        await AddAsync(zip, $"sessions/{id}/setup.json", JsonSerializer.Serialize(stored.Setup, DomainJson.Options), cancellationToken).ConfigureAwait(false);
        if (DrillReader.Read($"drill of session {id}", Encoding.UTF8.GetBytes(stored.DrillJson)).Value is { } drill)
        {
            await AddAsync(zip, $"sessions/{id}/session.json", documents.Json(stored.Setup, drill, record.Result()), cancellationToken).ConfigureAwait(false);
            await AddAsync(zip, $"sessions/{id}/shots.csv", documents.ShotsAsCsv(stored.Setup, record.Result()), cancellationToken).ConfigureAwait(false);
        }
    }

    private static async Task AddAsync(ZipArchive zip, string name, string text, CancellationToken cancellationToken)
    {
        var entry = zip.CreateEntry(name);
        var stream = await entry.OpenAsync(cancellationToken).ConfigureAwait(false);
        await using (stream.ConfigureAwait(false))
        {
            await stream.WriteAsync(Encoding.UTF8.GetBytes(text), cancellationToken).ConfigureAwait(false);
        }
    }
}
