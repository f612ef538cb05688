using AimTrainer.Reports;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;

namespace AimTrainer.Web;

/// <summary>Puts the console and its API into a host that runs stations.</summary>
public static class ConsoleHosting
{
    /// <summary>
    /// Adds what the console needs. Stations (<see cref="StationServices.AddStations"/>), an <see cref="ISessionStore"/>, an
    /// <see cref="IPracticeRecord"/> and <see cref="ISessionDocuments"/> must be registered; an <see cref="IFeedWatch"/> where lines are taken.
    /// </summary>
    public static IServiceCollection AddConsole(this IServiceCollection services, ConsoleSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton(new DrillShelf(settings.OwnDrills));
        services.TryAddSingleton(provider => provider.GetRequiredService<ISessionStore>() as IBallRecord
            ?? throw new InvalidOperationException("this store keeps no balls: register an IBallRecord beside it"));
        services.AddPrograms(settings);
        services.AddSingleton<LiveStations>();
        services.AddHostedService(provider => provider.GetRequiredService<LiveStations>());
        if (settings.GoesOnWithOpenSessions)
        {
            services.AddHostedService<OpenSessions>();
        }

        services.AddSingleton<AttachedProjectors>();
        services.AddMetrics();
        services.AddSingleton<StationMeters>();
        services.AddSingleton<WebMeters>();
        services.AddSingleton<Readiness>();
        AddAccess(services, settings);
        services.AddSingleton(provider => new ReportReader(provider.GetRequiredService<IPracticeRecord>(), provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => new ProgressReader(provider.GetRequiredService<IPracticeRecord>(), provider.GetRequiredService<TimeProvider>()));
        services.AddProblemDetails(options => options.CustomizeProblemDetails = context => context.ProblemDetails.Extensions.Remove("traceId"));
        services.Configure<KestrelServerOptions>(options =>
        {
            options.AddServerHeader = false;

            // Somewhat more than is taken: a body that is a little too long is read to its end and thrown away, so that its sender reads why.
            options.Limits.MaxRequestBodySize = 4 * ConsoleSettings.MostBodyBytes;
        });
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddRateLimiter(options => Paces.Set(options, settings.ShotsASecond));
        services.AddApiDescription();
        services.AddRazorComponents();
        services.AddSingleton<PlanWork>();
        return services;
    }

    /// <summary>Maps the pages, their assets and the API.</summary>
    public static WebApplication MapConsole(this WebApplication app)
    {
        app.Use((HttpContext context, RequestDelegate next) => SafeHeaders.AddAsync(context, next));
        app.UseMiddleware<Faults>();
        app.UseStatusCodePages(EmptyAnswers.SayAsync);
        app.UseRateLimiter();
        app.UseMiddleware<AccessGate>();
        app.UseAntiforgery();
        var api = app.MapGroup("/api");
        StationApi.Map(api);
        SessionApi.Map(api);
        DrillApi.Map(api);
        BowlerApi.Map(api);
        FigureApi.Map(api);
        PlanApi.Map(api);
        CompareApi.Map(api);
        BallApi.Map(api);
        ProgramHosting.Map(api);
        AccessApi.Map(api);
        ProjectorApi.Map(api);
        DisplayApi.Map(api);
        ProjectionApi.Map(api);
        app.MapOpenApi().OpenTo(Door.Anyone);
        HealthApi.Map(app);
        AssetPages.Map(app);
        app.MapRazorComponents<Pages.App>();
        return app;
    }

    private static void AddAccess(IServiceCollection services, ConsoleSettings settings)
    {
        services.AddSingleton(new Passphrase(settings.DataFolder));
        services.AddSingleton(provider => new Passes(settings.DataFolder, provider.GetRequiredService<Passphrase>(), provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton<PairingCodes>();
        services.AddSingleton<SignInTries>();
        services.AddSingleton(provider => new FeedTokens(settings.DataFolder, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(provider => new DisplayTokens(settings.DataFolder, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton<LookingDisplays>();
        services.AddSingleton<DisplayStreamParts>();
        services.AddSingleton(provider => new EmergencyStop(settings.DataFolder, provider.GetRequiredService<Audit>(), provider.GetRequiredService<TimeProvider>()));
        services.AddHostedService(provider => provider.GetRequiredService<EmergencyStop>());
        services.AddSingleton<IFeedGate>(provider => new FeedDoor(
            provider.GetRequiredService<Passphrase>(), provider.GetRequiredService<FeedTokens>(),
            [.. provider.GetRequiredService<IReadOnlyList<Station>>().Select(station => station.Number)], provider.GetRequiredService<Audit>()));
        services.AddSingleton<HostNames>();
        services.AddSingleton(provider => new Audit(settings.DataFolder, provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<ILogger<Audit>>()));
        services.AddDataProtection().SetApplicationName("aimtrainer").PersistKeysToFileSystem(KeyFolder(settings.DataFolder));

        // The keys lie beside the record, readable by their owner alone; that they are not encrypted as well need not be said at every start.
        services.AddLogging(logging => logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error));
        services.AddAntiforgery(options =>
        {
            options.HeaderName = FormTokens.Header;
            options.Cookie = new CookieBuilder
            {
                Name = FormTokens.Cookie,
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                SecurePolicy = CookieSecurePolicy.SameAsRequest,
                IsEssential = true,
            };
            options.SuppressXFrameOptionsHeader = true;
        });
    }

    private static DirectoryInfo KeyFolder(string dataFolder)
    {
        var path = Path.Combine(dataFolder, "keys");
        return OperatingSystem.IsWindows()
            ? Directory.CreateDirectory(path)
            : Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
