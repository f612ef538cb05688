using AimTrainer.Setup;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace AimTrainer.Benchmarks;

/// <summary>What <see cref="WebBenchmark"/> holds against ours: a bare Kestrel endpoint that does one durable insert of the body and answers.</summary>
internal static class BareServer
{
    public const string Name = "bare-server";

    public static async Task RunAsync(string file)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        await connection.OpenAsync();
        await using var set = connection.CreateCommand();
        set.CommandText = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE shots (number INTEGER PRIMARY KEY, body BLOB);";
        await set.ExecuteNonQueryAsync();
        await using var insert = connection.CreateCommand();
        insert.CommandText = "INSERT INTO shots (body) VALUES ($body)";
        var parameter = insert.Parameters.Add(new SqliteParameter("$body", null));
        await insert.PrepareAsync();
        using var turn = new SemaphoreSlim(1);

        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore();
        builder.Services.AddRouting();
        await using var app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        app.MapPost("/shots", async (HttpContext context) =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            await turn.WaitAsync();
            try
            {
                parameter.Value = body.ToArray();
                await insert.ExecuteNonQueryAsync();
            }
            finally
            {
                turn.Release();
            }

            return TypedResults.Text("{}", "application/json");
        });
        await app.StartAsync();
        Console.WriteLine($"at {app.Urls.First()}");
        await app.WaitForShutdownAsync();
    }

    /// <summary>Our own host, with no limit on the pace of shots from one address.</summary>
    public static async Task RunOursAsync(string folder, int stations)
    {
        await using var host = await ConsoleHost.OpenAsync(
            new ConsoleOptions { DataFolder = folder, Stations = stations, Urls = "http://127.0.0.1:0", ShotsASecond = 1_000_000 }, CancellationToken.None);
        Console.WriteLine($"at {host.Addresses.First()}");
        await host.UntilStoppedAsync(CancellationToken.None);
    }
}
