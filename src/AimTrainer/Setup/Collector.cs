using AimTrainer.Sessions;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace AimTrainer.Setup;

/// <summary>Sends metrics and traces to the user's own collector (OTLP over HTTP). Nothing is sent unless a collector is named.</summary>
internal static class Collector
{
    private const string ServiceName = "aimtrainer";

    /// <param name="services">The host's services.</param>
    /// <param name="collector">The collector's address.</param>
    public static void Add(IServiceCollection services, Uri collector)
    {
        void Export(OtlpExporterOptions options, string signal)
        {
            options.Protocol = OtlpExportProtocol.HttpProtobuf;
            options.Endpoint = new Uri($"{collector.GetLeftPart(UriPartial.Path).TrimEnd('/')}/v1/{signal}");
        }

        services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService(ServiceName))
            .WithMetrics(metrics => metrics
                .AddMeter(StationMeters.Name)
                .AddRuntimeInstrumentation()
                .AddOtlpExporter((options, _) => Export(options, "metrics")))
            .WithTracing(traces => traces
                .AddSource(StationMeters.Name)
                .AddAspNetCoreInstrumentation(options => options.Filter = IsShot)
                .AddOtlpExporter(options => Export(options, "traces")));
    }

    /// <summary>Only shots are traced: other addresses can hold a bowler's name.</summary>
    private static bool IsShot(HttpContext context) =>
        HttpMethods.IsPost(context.Request.Method) && context.Request.Path.StartsWithSegments("/api/stations", out var rest) && rest.Value!.EndsWith("/shots", StringComparison.Ordinal);
}
