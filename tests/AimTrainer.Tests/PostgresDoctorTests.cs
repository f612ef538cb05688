using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using AimTrainer.Doctor;
using AimTrainer.Setup;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Tests;

namespace AimTrainer.Tests;

/// <summary>The doctor and the readiness of a host whose record is in a real PostgreSQL database.</summary>
[Collection(PostgresCollection.Name)]
public sealed class PostgresDoctorTests(PostgresServer server) : IDisposable
{
    private readonly Workplace _work = new();
    private readonly string _database = "doctor_" + Guid.NewGuid().ToString("N")[..12];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _work.Dispose();

    [Fact]
    public async Task Doctor_EmptyDatabase_IsReachedAndMayBeMade()
    {
        var lines = await LookAsync(server.Place(_database));

        Assert.Equal([("database", DoctorState.Ok), ("tables", DoctorState.Warn), ("right to write", DoctorState.Ok), ("database's clock", DoctorState.Ok)], lines.Select(line => (line.Name, line.State)));
        Assert.Contains($"/{_database} is reached: PostgreSQL ", lines[0].Found, StringComparison.Ordinal);
        Assert.Equal("none yet", lines[1].Found);
    }

    [Fact]
    public async Task Doctor_RecordInADatabase_LooksThereAndNotAtAFile()
    {
        server.Place(_database);
        Assert.Equal(0, _work.Run("demo", "--once", "--drill", "ten-shot-spread", "--record", server.Text(_database)).Code);

        // By the option, and by the setting of a service: both look at the database.
        foreach (var command in (string[])[$"$AIM doctor --json --data $DATA --record '{server.Text(_database)}'", $"AIMTRAINER_RECORD='{server.Text(_database)}' $AIM doctor --json --data $DATA"])
        {
            var ran = await _work.ShellAsync($"export AIMTRAINER_URLS=http://127.0.0.1:0; unset DISPLAY WAYLAND_DISPLAY; {command}");

            Assert.True(ran.Code == 0, ran.Out + ran.Error);
            Assert.DoesNotContain(PostgresServer.Password, ran.Out + ran.Error, StringComparison.Ordinal);
            var lines = ran.Json().GetProperty("lines").EnumerateArray().ToDictionary(line => line.GetProperty("name").GetString()!, line => line);
            Assert.DoesNotContain("record", lines.Keys);
            foreach (var name in (string[])["data folder", "database", "tables", "right to write", "database's clock", "clock"])
            {
                Assert.True(lines.ContainsKey(name) && (name == "clock" || lines[name].GetProperty("state").GetString() == "ok"), $"{name}: {ran.Out}");
            }

            Assert.Contains("FirstTables", lines["tables"].GetProperty("found").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Doctor_ServerAway_FailsAndSaysWhatToDo()
    {
        var away = PostgresPlace.Read("postgres:Host=127.0.0.1;Port=1;Database=x;Username=u;Password=hidden", out _)!;

        var line = Assert.Single(await LookAsync(away));

        Assert.Equal((DoctorState.Fail, "database"), (line.State, line.Name));
        Assert.Contains("cannot be reached", line.Found, StringComparison.Ordinal);
        Assert.Contains("See that it and the network run", line.Found, StringComparison.Ordinal);
        Assert.DoesNotContain("hidden", line.Found, StringComparison.Ordinal);
        var ran = await _work.ShellAsync("unset DISPLAY WAYLAND_DISPLAY; $AIM doctor --data $DATA --record 'postgres:Host=127.0.0.1;Port=1;Database=x;Username=u;Password=hidden'");
        Assert.True(ran.Code == 1, ran.Out + ran.Error);
        Assert.Contains("fail  database: postgres:127.0.0.1:1/x", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Doctor_NoSuchDatabaseOrWrongPassword_SaysWhich()
    {
        var none = PostgresPlace.Read(server.Text("nowhere_at_all"), out _)!;
        Assert.Contains("Make it (createdb)", Assert.Single(await LookAsync(none)).Found, StringComparison.Ordinal);
        var stranger = PostgresPlace.Read(server.Text("postgres").Replace(PostgresServer.Password, "another", StringComparison.Ordinal), out _)!;
        Assert.Contains("does not let this user in", Assert.Single(await LookAsync(stranger)).Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Doctor_TablesOfANewerProgram_Fail()
    {
        var place = Made();
        server.Run(_database, "INSERT INTO aimtrainer.\"__EFMigrationsHistory\" VALUES ('29990101000000_Later', '99.0.0')");

        var line = Assert.Single(await LookAsync(place));

        Assert.Equal(DoctorState.Fail, line.State);
        Assert.Contains("made by a newer AimTrainer", line.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Doctor_OlderTablesOrServer_AreSaidWithWhatToDo()
    {
        var line = DatabaseDoctor.Tables(new PostgresHealth("15.1", false, 1, 3, "2026_First", null, default, default, null));

        Assert.Equal((DoctorState.Warn, "of an older version (2026_First); 2 to come"), (line.State, line.Found));
        Assert.Contains("pg_dump", line.ToDo, StringComparison.Ordinal);
        var server = DatabaseDoctor.Server("postgres:db:5432/x", new PostgresHealth("12.4", true, 1, 1, "2026_First", null, default, default, null));
        Assert.Equal((DoctorState.Fail, "use version 13 or a newer one"), (server.State, server.ToDo));
    }

    [Fact]
    public async Task Doctor_UserWithoutTheRight_FailsAndNamesWhatIsMissing()
    {
        var place = Made();
        var (user, empty) = ($"{_database}_user", $"{_database}_empty");
        server.Run("postgres", $"CREATE ROLE {user} LOGIN PASSWORD '{PostgresServer.Password}'");
        PostgresPlace As(string database) => PostgresPlace.Read(server.Text(database).Replace($"Username={PostgresServer.User}", $"Username={user}", StringComparison.Ordinal), out _)!;

        // May read only.
        server.Run(_database, $"GRANT USAGE ON SCHEMA aimtrainer TO {user}; GRANT SELECT ON ALL TABLES IN SCHEMA aimtrainer TO {user}");
        var reader = await RightAsync(As(_database));
        Assert.Equal(DoctorState.Fail, reader.State);
        Assert.Contains($"{user} may not write to ", reader.Found, StringComparison.Ordinal);
        Assert.Contains("log_steps", reader.Found, StringComparison.Ordinal);
        Assert.Contains("GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES", reader.Found, StringComparison.Ordinal);

        // May write, but for one table.
        server.Run(_database, $"GRANT INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA aimtrainer TO {user}; GRANT USAGE ON ALL SEQUENCES IN SCHEMA aimtrainer TO {user}; REVOKE INSERT ON aimtrainer.sessions FROM {user}");
        Assert.StartsWith($"{user} may not write to sessions: ", (await RightAsync(As(_database))).Found, StringComparison.Ordinal);
        server.Run(_database, $"GRANT INSERT ON aimtrainer.sessions TO {user}");
        Assert.Equal(DoctorState.Ok, (await RightAsync(As(_database))).State);

        // May not make tables.
        server.Place(empty);
        Assert.Contains("GRANT CREATE ON DATABASE", (await RightAsync(As(empty))).Found, StringComparison.Ordinal);

        // Nobody may: the database is set read-only.
        server.Run("postgres", $"ALTER DATABASE {_database} SET default_transaction_read_only = on");
        var all = await RightAsync(place);
        Assert.Equal(DoctorState.Fail, all.State);
        Assert.Contains("set read-only", all.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, DoctorState.Ok, "")]
    [InlineData(-60, DoctorState.Warn, "ahead of")]
    [InlineData(1200, DoctorState.Fail, "behind")]
    public async Task Doctor_ClocksApart_AreJudged(int seconds, object state, string words)
    {
        var clock = new Shifted(TimeSpan.FromSeconds(seconds));

        var line = (await new DatabaseDoctor(server.Place(_database), clock).LookAsync(Cancel)).Single(line => line.Name == "database's clock");

        Assert.Equal(state, line.State);
        Assert.Contains(words, line.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ready_RecordInADatabase_TellsEachThingAndIs503WhenItIsReadOnlyOrAway()
    {
        await using var host = await ConsoleHost.OpenAsync(new ConsoleOptions { DataFolder = _work.Data, Urls = "http://127.0.0.1:0", Record = server.Place(_database) }, Cancel);
        using var client = new HttpClient { BaseAddress = new Uri(host.Addresses.First()) };
        var (status, checks) = await ReadyAsync(client);
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(["data folder", "disk", "store", "stations", "database", "tables", "right to write", "database's clock"], checks.Select(check => check.Name));
        Assert.All(checks, check => Assert.True(check.Ok, check.Found));
        Assert.DoesNotContain(checks, check => check.Found.Contains(PostgresServer.Password, StringComparison.Ordinal));

        server.Run("postgres", $"ALTER DATABASE {_database} SET default_transaction_read_only = on");
        var bad = await NotReadyAsync(client, all => all.Any(check => check is { Name: "right to write", Ok: false }));
        Assert.Contains("set read-only", bad.Single(check => check.Name == "right to write").Found, StringComparison.Ordinal);
        server.Run("postgres", $"ALTER DATABASE {_database} RESET default_transaction_read_only");
        while ((await ReadyAsync(client)).Status != HttpStatusCode.OK)
        {
            // What was found holds for a second.
        }

        server.Stop();
        try
        {
            var away = await NotReadyAsync(client, all => all.Any(check => check is { Name: "database", Ok: false }));
            Assert.Contains("See that it and the network run", away.Single(check => check.Name == "database").Found, StringComparison.Ordinal);
        }
        finally
        {
            server.Start();
        }

        while ((await ReadyAsync(client)).Status != HttpStatusCode.OK)
        {
            // It comes back by itself.
        }
    }

    private static async Task<IReadOnlyList<DoctorLine>> LookAsync(PostgresPlace place) => await new DatabaseDoctor(place, TimeProvider.System).LookAsync(Cancel);

    private static async Task<DoctorLine> RightAsync(PostgresPlace place) => (await LookAsync(place)).Single(line => line.Name == "right to write");

    private static async Task<(HttpStatusCode Status, IReadOnlyList<(string Name, bool Ok, string Found)> Checks)> ReadyAsync(HttpClient client)
    {
        using var answer = await client.GetAsync("/health/ready", Cancel);
        var body = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel);
        return (answer.StatusCode, [.. body.GetProperty("checks").EnumerateArray()
            .Select(check => (check.GetProperty("name").GetString()!, check.GetProperty("ok").GetBoolean(), check.GetProperty("found").GetString()!))]);
    }

    private static async Task<IReadOnlyList<(string Name, bool Ok, string Found)>> NotReadyAsync(HttpClient client, Func<IReadOnlyList<(string Name, bool Ok, string Found)>, bool> isSo)
    {
        while (true)
        {
            var (status, checks) = await ReadyAsync(client);
            if (isSo(checks))
            {
                Assert.Equal(HttpStatusCode.ServiceUnavailable, status);
                return checks;
            }
        }
    }

    private PostgresPlace Made()
    {
        var place = server.Place(_database);
        PostgresSessionStore.Open(place, TimeProvider.System).Dispose();
        return place;
    }

    private sealed class Shifted(TimeSpan by) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + by;
    }
}
