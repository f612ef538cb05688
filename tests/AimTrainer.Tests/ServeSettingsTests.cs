using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Tests;

/// <summary>The settings of a host: where they come from, which wins, and what a mistake says.</summary>
public sealed class ServeSettingsTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Of_ThreeSources_TheStrongestWinsSettingBySetting()
    {
        var file = ServeSettings.OfFile(_work.File("serve.json", """{"stations": 12, "urls": "http://127.0.0.1:6000", "logs": "json", "hosts": ["desk"], "shotsASecond": 50}"""));
        var environment = ServeSettings.OfEnvironment(Variables(("AIMTRAINER_STATIONS", "20"), ("AIMTRAINER_LINES", "5272")));
        var given = new ServeChoice { Source = "option", Stations = 30 };

        var (options, settings) = ServeSettings.Of([given, environment, file]);

        Assert.Equal((30, "http://127.0.0.1:6000", "127.0.0.1:5272", LogFormat.Json, 50, null), (options.Stations, options.Urls, options.Lines?.ToString(), options.Logs, options.ShotsASecond, options.Telemetry));
        Assert.Equal(["desk"], options.HostNames);
        Assert.Equal("option", Assert.Single(settings, one => one.Name == "stations").Source);
        Assert.Equal("environment", Assert.Single(settings, one => one.Name == "lines").Source);
        Assert.EndsWith("serve.json", Assert.Single(settings, one => one.Name == "urls").Source, StringComparison.Ordinal);
        Assert.Equal(("off", "usual"), (Assert.Single(settings, one => one.Name == "telemetry").Value, Assert.Single(settings, one => one.Name == "telemetry").Source));
    }

    [Fact]
    public void OfFile_Mistakes_AreAllToldWithLineAndPath()
    {
        var file = _work.File("bad.json", "{\n  \"stations\": 65,\n  \"lines\": \"nowhere\",\n  \"telemetry\": \"ftp://x\",\n  \"logs\": \"loud\",\n  \"stationz\": 3\n}");

        var said = Assert.Throws<UserException>(() => ServeSettings.OfFile(file)).Message;

        foreach (var words in (string[])[$"{file}:2", "$.stations", "found 65", $"{file}:3", "$.lines", "found \"nowhere\"; allowed: a port from 0", $"{file}:4", "OpenTelemetry collector", $"{file}:5", "loud", $"{file}:6", "stationz"])
        {
            Assert.Contains(words, said, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("AIMTRAINER_STATIONS", "0", "a whole number from 1 to 64")]
    [InlineData("AIMTRAINER_URLS", "not an address", "an address such as http://127.0.0.1:5271")]
    [InlineData("AIMTRAINER_LINES", "70000", "a port from 0")]
    [InlineData("AIMTRAINER_TELEMETRY", "collector", "the address of your own OpenTelemetry collector")]
    [InlineData("AIMTRAINER_LOGS", "xml", "text, json")]
    [InlineData("AIMTRAINER_SHOTS_A_SECOND", "-1", "a whole number from 1 to 10000")]
    public void OfEnvironment_WrongValue_NamesTheVariable(string name, string value, string allowed)
    {
        var said = Assert.Throws<UserException>(() => ServeSettings.OfEnvironment(Variables((name, value)))).Message;

        Assert.StartsWith($"{name}: found {value}; allowed: {allowed}", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Serve_Check_SaysWhatHoldsAndEnds()
    {
        Directory.CreateDirectory(_work.Data);
        File.WriteAllText(Path.Combine(_work.Data, "serve.json"), """{"stations": 8}""");

        var ran = _work.Run("serve", "--check", "--urls", "http://127.0.0.1:6001");

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Matches(@"stations +8 +\S*serve\.json", ran.Out);
        Assert.Matches(@"urls +http://127\.0\.0\.1:6001 +option", ran.Out);
        Assert.Matches(@"telemetry +off +usual", ran.Out);
    }

    [Fact]
    public void Serve_RecordAndChain_AreThoseOfTheHost()
    {
        var token = _work.File("token", "center-1234");

        var named = _work.Run("serve", "--check", "--record", "postgres:Host=db.lan;Database=lanes;Username=center;Password=hidden", "--chain", "https://chain.example", "--token-file", token);
        var usual = _work.Run("serve", "--check");

        Assert.True(named.Code == 0, named.Error);
        Assert.Matches(@"record +.*db\.lan.*lanes.* option", named.Out);
        Assert.Matches(@"chain +https://chain\.example +option", named.Out);
        Assert.DoesNotContain("hidden", named.Out, StringComparison.Ordinal);
        Assert.Matches(@"record +a file in data +usual", usual.Out);
        Assert.Matches(@"chain +none +usual", usual.Out);
    }

    [Fact]
    public void Serve_FileWithAMistake_StartsNothing()
    {
        var file = _work.File("mine.json", """{"stations": "many"}""");

        var ran = _work.Run("serve", "--config", file);

        Assert.Equal(2, ran.Code);
        Assert.Contains($"{file}:1", ran.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_work.Data));
    }

    private static Func<string, string?> Variables(params (string Name, string Value)[] set) => name => set.FirstOrDefault(one => one.Name == name).Value;
}
