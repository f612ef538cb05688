using System.Buffers.Binary;

namespace AimTrainer.Tests;

/// <summary>Commands that draw, on a machine without a screen.</summary>
public sealed class DisplayCommandTests : IDisposable
{
    private readonly Workplace _work = new();

    private string Pictures => Path.Combine(_work.Folder, "pictures");

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Frames_StoredSession_APictureBeforeAndAfterEachShotOfEachDisplay()
    {
        Throw("15/7\n14/9\nvoid 2 foul\n");

        var ran = _work.Run("frames", "--session", "last", "--out", Pictures, "--size", "320x180");

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Contains("12 pictures of session ", ran.Out, StringComparison.Ordinal);
        Assert.Contains("they fit no real projector", ran.Out, StringComparison.Ordinal);
        string[] moments = ["shot-000-start", "shot-001-a-before", "shot-001-b-after", "shot-002-a-before", "shot-002-b-after", "shot-002-c-last"];
        Assert.Equal(
            moments.SelectMany(moment => new[] { $"{moment}-overhead.png", $"{moment}-projector.png" }),
            Directory.EnumerateFiles(Pictures).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(Directory.EnumerateFiles(Pictures), file => Assert.Equal((320, 180), SizeOf(file)));
        Assert.NotEqual(Bytes("shot-001-a-before-overhead.png"), Bytes("shot-001-b-after-overhead.png"));
        Assert.NotEqual(Bytes("shot-001-a-before-projector.png"), Bytes("shot-001-b-after-projector.png"));
        Assert.NotEqual(Bytes("shot-000-start-projector.png"), Bytes("shot-001-a-before-projector.png"));
    }

    [Fact]
    public void Frames_Json_TellsEachPicture()
    {
        Throw("15/7\n");

        var json = _work.Run("frames", "--session", "last", "--out", Pictures, "--size", "64x36", "--kind", "overhead", "--json").Json();

        Assert.Equal(Pictures, json.GetProperty("folder").GetString());
        Assert.False(json.GetProperty("straightMap").GetBoolean());
        Assert.Equal(
            [
                ("shot-000-start-overhead.png", null, "start"), ("shot-001-a-before-overhead.png", 1, "before"),
                ("shot-001-b-after-overhead.png", 1, "after"), ("shot-001-c-last-overhead.png", null, "last"),
            ],
            json.GetProperty("pictures").EnumerateArray().Select(picture => (
                picture.GetProperty("file").GetString()!,
                picture.GetProperty("shot") is { ValueKind: System.Text.Json.JsonValueKind.Number } shot ? shot.GetInt32() : (int?)null,
                picture.GetProperty("when").GetString()!)));
    }

    [Fact]
    public void Frames_OfABackupFile_DrawsItsNewestSession()
    {
        Throw("15/7\n");
        var backup = Path.Combine(_work.Folder, "backup.db");
        _work.Run("backup", backup);

        var ran = _work.Run("frames", "--session", backup, "--out", Pictures, "--size", "64x36");

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Contains("8 pictures", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1x1")]
    [InlineData("7x400")]
    [InlineData("2000x20")]
    public void Frames_OddSizes_AreDrawn(string size)
    {
        Throw("15/7\n");

        var ran = _work.Run("frames", "--session", "last", "--out", Pictures, "--size", size);

        Assert.True(ran.Code == 0, ran.Error);
        var sides = size.Split('x').Select(int.Parse).ToArray();
        Assert.All(Directory.EnumerateFiles(Pictures), file => Assert.Equal((sides[0], sides[1]), SizeOf(file)));
    }

    [Theory]
    [InlineData("--size", "0x5", "--size: found 0x5; allowed: 1x1 to 7680x4320, as 1920x1080")]
    [InlineData("--size", "9000x5", "--size: found 9000x5; allowed")]
    [InlineData("--size", "wide", "--size: found wide; allowed")]
    [InlineData("--kind", "lamp", "--kind: found lamp; allowed: both, projector, overhead")]
    [InlineData("--every", "minute", "--every: found minute; allowed: shot")]
    [InlineData("--theme", "evenin", "--theme: found evenin, which is no file and no theme; did you mean evening?")]
    [InlineData("--session", "nothing", "nothing: no such session and no such file; see: aimtrainer sessions list")]
    public void Frames_WrongValue_SaysWhatIsAllowed(string option, string value, string said)
    {
        Throw("15/7\n");
        string[] session = option == "--session" ? [] : ["--session", "last"];

        var ran = _work.Run(["frames", .. session, "--out", Pictures, option, value]);

        Assert.Equal(2, ran.Code);
        Assert.Contains(said, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Frames_BrokenThemeFile_SaysWhere()
    {
        Throw("15/7\n");
        var theme = _work.File("theme.json", "{ \"format\": 1,\n  \"id\": \"Mine!\" }");

        var ran = _work.Run("frames", "--session", "last", "--out", Pictures, "--theme", theme);

        Assert.Equal(2, ran.Code);
        Assert.Contains($"{theme}:2", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_WithoutAWindow_WritesTwoPicturesAndSaysHowToGetWindows()
    {
        var ran = _work.Run("demo", "--once", "--seed", "7");

        Assert.True(ran.Code == 0, ran.Error);
        var line = Assert.Single(ran.Out.Split('\n'), line => line.StartsWith("What the displays showed: ", StringComparison.Ordinal));
        Assert.Contains("(for live windows: aimtrainer demo --overhead", line, StringComparison.Ordinal);
        foreach (var name in (string[])["demo-overhead.png", "demo-projector.png"])
        {
            Assert.Contains(Path.Combine(_work.Data, name), line, StringComparison.Ordinal);
            Assert.Equal((1280, 720), SizeOf(Path.Combine(_work.Data, name)));
        }
    }

    [Fact]
    public async Task Run_AskedForWindowsWhereThereAreNone_SaysSoInOneLineAndGoesOn()
    {
        var ran = await _work.ShellAsync("printf '15/7\\n' | env -u DISPLAY -u WAYLAND_DISPLAY $AIM run --drill two-point-line --overhead --projector --data $DATA");

        Assert.True(ran.Code == 0, ran.Error);
        var line = Assert.Single(ran.Out.Split('\n'), line => line.StartsWith("no window: ", StringComparison.Ordinal));
        Assert.EndsWith("; the session goes on without", line, StringComparison.Ordinal);
        Assert.Contains("  1 |", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("monitors")]
    [InlineData("display overhead")]
    [InlineData("display projector --monitor 2 --station 3")]
    public async Task Display_WhereThereIsNoScreen_FailsInOneLine(string command)
    {
        var ran = await _work.ShellAsync($"env -u DISPLAY -u WAYLAND_DISPLAY $AIM {command} --data $DATA");

        Assert.Equal(1, ran.Code);
        Assert.StartsWith("no window: there is no display here (", Assert.Single(ran.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void Display_MonitorAndWindowed_AreOneOrTheOther()
    {
        var ran = _work.Run("display", "overhead", "--monitor", "1", "--windowed");

        Assert.Equal(2, ran.Code);
        Assert.Contains("--monitor, --windowed: give one of them", ran.Error, StringComparison.Ordinal);
    }

    private void Throw(string typed) => _work.Typed(typed, "run", "--drill", "two-point-line");

    private byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(Pictures, name));

    /// <summary>Source: the PNG specification, section 11.2.2 (IHDR).</summary>
    private static (int Width, int Height) SizeOf(string file)
    {
        var bytes = File.ReadAllBytes(file);
        return (BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(20)));
    }
}
