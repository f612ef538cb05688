using System.Net;
using System.Net.Sockets;
using AimTrainer.Doctor;
using Microsoft.Data.Sqlite;

namespace AimTrainer.Tests;

public sealed class DoctorTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    /// <summary>A process of its own: it looks for monitors, and the windows of other tests share this one.</summary>
    [Fact]
    public async Task Doctor_AfterASession_LooksAtEverything()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");

        var ran = await _work.ShellAsync("env -u DISPLAY -u WAYLAND_DISPLAY AIMTRAINER_URLS=http://127.0.0.1:0 $AIM doctor --json --data $DATA");
        Assert.True(ran.Code == 0, ran.Out + ran.Error);
        var json = ran.Json();

        var lines = json.GetProperty("lines").EnumerateArray().ToDictionary(line => line.GetProperty("name").GetString()!, line => line.GetProperty("state").GetString());
        foreach (var name in (string[])["data folder", "disk", "in use", "record", "emergency stop", "settings", "passphrase", "port", "drawing", "monitors", "maps", "sound", "clock"])
        {
            Assert.Contains(name, lines.Keys);
        }

        Assert.Equal(("ok", "ok", "warn"), (lines["data folder"], lines["record"], lines["monitors"]));
    }

    [Fact]
    public void Doctor_NoFolderYet_IsNoFailure()
    {
        var line = Assert.Single(new DataDoctor(_work.Data, TimeProvider.System).Look());

        Assert.Equal(DoctorState.Warn, line.State);
    }

    [Fact]
    public void Doctor_DamagedRecord_FailsAndSaysWhatToDo()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        var file = Path.Combine(_work.Data, "aimtrainer.db");
        SqliteConnection.ClearAllPools();
        using (var stream = new FileStream(file, FileMode.Open, FileAccess.Write))
        {
            // Pages from the third on; the header stays, so that it still is a record.
            stream.Position = 8192;
            stream.Write(new byte[16384]);
        }

        var line = Assert.Single(new DataDoctor(_work.Data, TimeProvider.System).Look(), line => line.Name == "record");

        Assert.Equal(DoctorState.Fail, line.State);
        Assert.Contains("aimtrainer restore FILE", line.ToDo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, DoctorState.Fail)]
    [InlineData(1000, DoctorState.Warn)]
    [InlineData(100_000, DoctorState.Ok)]
    public void Doctor_RoomOnTheDisk_IsJudged(long mebibytes, object state)
    {
        Directory.CreateDirectory(_work.Data);

        var lines = new DataDoctor(_work.Data, TimeProvider.System) { FreeBytes = _ => mebibytes << 20 }.Look();

        Assert.Equal(state, Assert.Single(lines, line => line.Name == "disk").State);
    }

    [Fact]
    public void Doctor_PortTakenByAnother_FailsButNotByItsOwnHost()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var url = $"http://127.0.0.1:{((IPEndPoint)taken.LocalEndpoint).Port}";
        Func<string, string?> variable = name => name == "AIMTRAINER_URLS" ? url : null;

        Assert.Equal(DoctorState.Fail, Assert.Single(new NetworkDoctor(_work.Data, isHeld: false).Look(variable), line => line.Name == "port").State);
        Assert.Equal(DoctorState.Ok, Assert.Single(new NetworkDoctor(_work.Data, isHeld: true).Look(variable), line => line.Name == "port").State);
    }

    [Fact]
    public void Doctor_OnTheNetworkWithoutAPassphrase_Fails()
    {
        var lines = new NetworkDoctor(_work.Data, isHeld: false).Look(name => name == "AIMTRAINER_URLS" ? "http://0.0.0.0:0" : null);

        Assert.Equal(DoctorState.Fail, Assert.Single(lines, line => line.Name == "passphrase").State);
    }

    [Fact]
    public void Doctor_WrongSettings_FailInWords()
    {
        var line = Assert.Single(new NetworkDoctor(_work.Data, isHeld: false).Look(name => name == "AIMTRAINER_STATIONS" ? "900" : null));

        Assert.Equal((DoctorState.Fail, "settings"), (line.State, line.Name));
        Assert.Contains("AIMTRAINER_STATIONS: found 900", line.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Doctor_ClockBeforeTheNewestSession_Fails()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");
        var doctor = new DataDoctor(_work.Data, new Clock(TimeProvider.System.GetUtcNow().AddHours(-1)));
        Assert.NotEmpty(doctor.Look().ToList());
        Assert.Equal(DoctorState.Fail, doctor.Clock().State);
        Assert.Equal(DoctorState.Fail, new DataDoctor(_work.Data, new Clock(new DateTimeOffset(1970, 1, 1, 0, 0, 0, TimeSpan.Zero))).Clock().State);
    }

    [Fact]
    public void Stop_AndRelease_FromTheTerminal()
    {
        Assert.StartsWith("All projection is stopped.", _work.Run("stop").Out, StringComparison.Ordinal);
        Assert.Equal("All projection is stopped already.\n", _work.Run("stop").Out);
        Assert.Equal(DoctorState.Warn, Assert.Single(new DataDoctor(_work.Data, TimeProvider.System).Look(), line => line.Name == "emergency stop").State);
        Assert.Equal("Projection is shown again.\n", _work.Run("stop", "--release").Out);
        Assert.Equal("Projection was not stopped.\n", _work.Run("stop", "--release").Out);
    }

    private sealed class Clock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
