using AimTrainer.Sessions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace AimTrainer.Web;

/// <summary>Programs, groups, turns and people in a host of the console.</summary>
internal static class ProgramHosting
{
    public static void AddPrograms(this IServiceCollection services, ConsoleSettings settings)
    {
        services.AddSingleton(provider => new ProgramShelf(settings.OwnPrograms, provider.GetRequiredService<DrillShelf>()));
        services.AddSingleton(new PeopleRegister(settings.DataFolder));
        services.AddSingleton(new GroupRegister(settings.DataFolder));
        services.TryAddSingleton<IScreenNames>(provider => provider.GetRequiredService<PeopleRegister>());
        services.TryAddSingleton<ILineupKeeper>(new LineupFiles(settings.DataFolder));
        services.AddSingleton<GroupLanes>();
        services.AddSingleton<GroupView>();
        services.AddSingleton<NeedBoard>();
        services.AddSingleton<BowlerExport>();
        services.AddSingleton<BowlerErasing>();
        services.AddHostedService<RetentionService>();
    }

    public static void Map(IEndpointRouteBuilder api)
    {
        TurnApi.Map(api);
        GroupApi.Map(api);
        PeopleApi.Map(api);
    }
}
