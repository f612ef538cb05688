using AimTrainer.Store.Postgres;
using AimTrainer.Web;

namespace AimTrainer.Doctor;

/// <summary>What the doctor finds of a record's database, for whoever asks whether the host is ready.</summary>
/// <param name="place">The database.</param>
/// <param name="clock">The time.</param>
internal sealed class DatabaseReadiness(PostgresPlace place, TimeProvider clock) : IRecordCheck
{
    public async Task<IReadOnlyList<HealthCheck>> LookAsync(CancellationToken cancellationToken) =>
        [.. (await new DatabaseDoctor(place, clock).LookAsync(cancellationToken).ConfigureAwait(false))
            .Select(line => new HealthCheck(line.Name, line.State != DoctorState.Fail, line.ToDo is { } todo ? $"{line.Found}: {todo}" : line.Found))];
}
