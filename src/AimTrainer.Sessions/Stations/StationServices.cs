using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace AimTrainer.Sessions;

/// <summary>Registers stations with a host.</summary>
public static class StationServices
{
    /// <summary>
    /// Adds stations 1 to <paramref name="count"/> and the service that runs them, as <c>IReadOnlyList&lt;Station&gt;</c>. An
    /// <see cref="ISessionStore"/> must be registered; a <see cref="TimeProvider"/> is the system's unless one is. Bowlers take
    /// turns where there is an <see cref="ILineupKeeper"/>; names are shown as an <see cref="IScreenNames"/> says.
    /// </summary>
    /// <param name="services">The host's services.</param>
    /// <param name="count">How many lanes, 1 or more; one process is made for 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one.</exception>
    public static IServiceCollection AddStations(this IServiceCollection services, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<IReadOnlyList<Station>>(provider =>
        {
            var store = provider.GetRequiredService<ISessionStore>();
            var clock = provider.GetRequiredService<TimeProvider>();
            var meters = provider.GetService<StationMeters>();
            var (lineups, names) = (provider.GetService<ILineupKeeper>(), provider.GetService<IScreenNames>());
            return [.. Enumerable.Range(1, count).Select(number => new Station(number, store, clock, meters, lineups, names))];
        });
        services.AddHostedService<StationService>();
        return services;
    }
}
