using System.Net;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Web.Tests;

public sealed class SessionApiTests
{
    [Fact]
    public async Task Record_OfASession_HasItsShotsAndFigures()
    {
        await using var host = await TestHost.StartAsync();
        var session = await host.StartSessionAsync();
        await host.ShotAsync("a", 10.4);

        var record = await host.GetAsync($"/api/sessions/{session}");

        Assert.Equal((session, "Ann"), (record.GetProperty("session").GetString(), record.GetProperty("bowler").GetString()));
        var shot = record.GetProperty("blocks")[0].GetProperty("shots")[0];
        Assert.Equal(0.4, shot.GetProperty("targets")[0].GetProperty("missBoards").GetDouble());
    }

    [Fact]
    public async Task ShotsCsv_NoteThatIsAFormula_IsNoneToASpreadsheet()
    {
        await using var host = await TestHost.StartAsync();
        var session = await host.StartSessionAsync();
        await host.Client.PostAsync("/api/stations/1/shots", TestHost.Json("""{"id":"=1+1","arrowsBoard":10,"note":"@sum(a1), said"}"""), TestContext.Current.CancellationToken);

        var answer = await host.Client.GetAsync($"/api/sessions/{session}/shots.csv", TestContext.Current.CancellationToken);

        Assert.Equal("text/csv; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Equal($"session-{session}.csv", answer.Content.Headers.ContentDisposition?.FileName);
        var lines = (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n');
        Assert.StartsWith("id,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("'=1+1,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",\"'@sum(a1), said\",", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Action_SameIdTwice_IsOneActionWithTheSameAnswer()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        await host.ShotAsync("a");
        async Task<string> VoidAsync() => await (await host.Client.PostAsync(
            "/api/stations/1/actions", TestHost.Json("""{"kind":"note","text":"slipped","id":"n-1"}"""), TestContext.Current.CancellationToken))
            .Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        var first = await VoidAsync();
        await host.ShotAsync("b");
        var again = await VoidAsync();
        await host.RestartAsync();
        var afterRestart = await VoidAsync();

        Assert.Equal(3, JsonDocument.Parse(first).RootElement.GetProperty("sequence").GetInt32());
        Assert.Equal((first, first), (again, afterRestart));
        Assert.Equal(4, (await host.GetAsync("/api/stations/1")).GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Shot_SameIdTwice_IsOneShotWithTheSameAnswerAcrossARestart()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();
        var first = await (await host.ShotAsync("a", 10.4)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        await host.RestartAsync();
        var again = await (await host.ShotAsync("a", 10.4)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(first, again);
        Assert.Equal(2, (await host.GetAsync("/api/stations/1")).GetProperty("nextNumber").GetInt32());
    }

    [Fact]
    public async Task Restart_OneLanesLogIsBroken_TheOtherLaneGoesOnAndSaysWhichIsNot()
    {
        await using var host = await TestHost.StartAsync();
        var broken = await host.StartSessionAsync();
        await host.StartSessionAsync(station: 2);
        var record = new SqliteConnection($"Data Source={Path.Combine(host.Folder, "aimtrainer.db")}");
        await using (record)
        {
            await record.OpenAsync(TestContext.Current.CancellationToken);
            var spoil = record.CreateCommand();
            await using (spoil)
            {
                spoil.CommandText = "UPDATE log_steps SET input_json = 'spoilt' WHERE session_key = (SELECT key FROM sessions WHERE station = 1)";
                Assert.InRange(await spoil.ExecuteNonQueryAsync(TestContext.Current.CancellationToken), 1, 10);
            }
        }

        await host.RestartAsync();

        Assert.Equal(HttpStatusCode.OK, (await host.ShotAsync("b", station: 2)).StatusCode);
        Assert.Contains($"station 1: session {broken} is left as it is", host.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Drills_OneFileCannotBeRead_CostsThatDrillOnly()
    {
        await using var host = await TestHost.StartAsync();
        Directory.CreateDirectory(Path.Combine(host.Folder, "drills"));
        File.CreateSymbolicLink(Path.Combine(host.Folder, "drills", "gone.json"), Path.Combine(host.Folder, "nowhere.json"));

        foreach (var page in (string[])["/drills", "/drills/gone", "/drills/gone/edit", "/lane/1/start", "/api/drills"])
        {
            Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync(page, TestContext.Current.CancellationToken)).StatusCode);
        }

        var start = await host.Client.PostAsync(
            "/api/stations/1/sessions", TestHost.Json("""{"bowler":"Ann","drill":"gone","hand":"right"}"""), TestContext.Current.CancellationToken);
        Assert.Contains("a file that cannot be read", await TestHost.RefusedAsync(HttpStatusCode.BadRequest, start), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Action_OfAnotherSession_IsLeftOut()
    {
        await using var host = await TestHost.StartAsync();
        await host.StartSessionAsync();

        var answer = await host.Client.PostAsync("/api/stations/1/actions?session=earlier", TestHost.Json("""{"kind":"pause"}"""), TestContext.Current.CancellationToken);

        Assert.Contains("left out", await TestHost.RefusedAsync(HttpStatusCode.Conflict, answer), StringComparison.Ordinal);
        Assert.Equal("throwing", (await host.GetAsync("/api/stations/1")).GetProperty("phase").GetString());
    }

    [Fact]
    public async Task Drill_OwnOneDeleted_ShippedOneIsSeenAgainAndStays()
    {
        await using var host = await TestHost.StartAsync();
        var text = await host.Client.GetStringAsync("/api/drills/three-rings", TestContext.Current.CancellationToken);
        await host.Client.PutAsync("/api/drills/three-rings", TestHost.Json(text), TestContext.Current.CancellationToken);

        var deleted = await host.Client.DeleteAsync("/api/drills/three-rings", TestContext.Current.CancellationToken);
        var again = await host.Client.DeleteAsync("/api/drills/three-rings", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, deleted.StatusCode);
        Assert.Contains("came with the program", await TestHost.RefusedAsync(HttpStatusCode.Conflict, again), StringComparison.Ordinal);
        Assert.Equal(text, await host.Client.GetStringAsync("/api/drills/three-rings", TestContext.Current.CancellationToken));
        Assert.Empty(Directory.GetFiles(Path.Combine(host.Folder, "drills")));
    }
}
