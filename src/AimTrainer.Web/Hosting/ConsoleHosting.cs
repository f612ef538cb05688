using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace AimTrainer.Web;

/// <summary>Puts the console and its API into a host that runs stations.</summary>
public static class ConsoleHosting
{
    /// <summary>Adds what the console needs. Stations (<see cref="StationServices.AddStations"/>) and an <see cref="ISessionStore"/> must be registered.</summary>
    public static IServiceCollection AddConsole(this IServiceCollection services, ConsoleSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton(new DrillShelf(settings.OwnDrills));
        services.AddSingleton<LiveStations>();
        services.AddHostedService(provider => provider.GetRequiredService<LiveStations>());
        services.AddHostedService<OpenSessions>();
        services.AddProblemDetails();
        services.AddAntiforgery();
        services.AddRazorComponents();
        return services;
    }

    /// <summary>Maps the pages, their assets and the API.</summary>
    public static WebApplication MapConsole(this WebApplication app)
    {
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.UseAntiforgery();
        var api = app.MapGroup("/api");
        StationApi.Map(api);
        SessionApi.Map(api);
        DrillApi.Map(api);
        BowlerApi.Map(api);
        AssetPages.Map(app);
        app.MapRazorComponents<Pages.App>();
        return app;
    }
}
