using AimTrainer.Store.Postgres;
using static AimTrainer.Store.Tests.Scenario;

namespace AimTrainer.Chain.Tests;

/// <summary>What lies in a chain's tables.</summary>
internal static class ChainTables
{
    /// <summary>Every step of a center: session, sequence, input, events.</summary>
    public static Task<List<(string Session, long Sequence, string Input, string Events)>> EventsAsync(this PostgresChain chain, string center) => chain.AskAsync(
        tables => Task.FromResult((
            from step in tables.LogSteps
            join session in tables.Sessions on step.SessionKey equals session.Key
            join at in tables.Centers on session.CenterId equals at.Id
            where at.Name == center
            select new { session.Id, step.Sequence, step.InputJson, step.EventsJson }).AsEnumerable()
            .Select(step => (step.Id, step.Sequence, step.InputJson, step.EventsJson)).Order().ToList()),
        Cancel);
}
