using System.Text.Json;
using System.Text.RegularExpressions;

namespace AimTrainer.Tests;

public sealed partial class SessionTests : IDisposable
{
    private readonly Workplace _work = new();

    public static TheoryData<string> ShippedDrills =>
        [.. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "drills"), "*.json").Where(file => !file.EndsWith(".schema.json", StringComparison.Ordinal)).Select(file => Path.GetFileNameWithoutExtension(file)!).Order()];

    public void Dispose() => _work.Dispose();

    [Theory]
    [MemberData(nameof(ShippedDrills))]
    public void Demo_EveryShippedDrill_RunsToItsEndMarkedSimulated(string drill)
    {
        var ran = _work.Run("demo", "--once", "--drill", drill, "--seed", "3", "--pattern", "41", "--breakpoint", "8@42");

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Contains("simulated: every shot is invented", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Session over: all blocks were thrown.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("aimtrainer.db", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_SecondStart_ListsTheFirstAndEveryViewSaysSimulated()
    {
        _work.Run("demo", "--seed", "7");

        var second = _work.Run("demo", "--seed", "8");

        Assert.StartsWith("Kept from before, newest first:\n  ", second.Out, StringComparison.Ordinal);
        Assert.Contains("Demo Bowler (simulated): 15 shots", second.Out, StringComparison.Ordinal);
        Assert.Equal(2, _work.Run("sessions", "list", "--json").Json().EnumerateArray().Count(session => session.GetProperty("simulated").GetBoolean()));
        Assert.Contains("(simulated)", _work.Run("sessions", "list").Out, StringComparison.Ordinal);
        Assert.Contains("simulated: every shot is invented", _work.Run("sessions", "show", "last").Out, StringComparison.Ordinal);
        Assert.True(_work.Run("sessions", "show", "last", "--json").Json().GetProperty("simulated").GetBoolean());
        Assert.All(Rows(_work.Run("sessions", "export", "last").Out), row => Assert.Contains("simulated shot", row, StringComparison.Ordinal));
    }

    [Fact]
    public void Demo_Json_OneObjectALineAndTheRecordLast()
    {
        var lines = _work.Run("demo", "--json", "--seed", "7").JsonLines();

        Assert.True(lines[0].TryGetProperty("opened", out _));
        Assert.Equal(16, lines.Count(line => line.TryGetProperty("kept", out _)));
        Assert.Equal(15, lines[^1].GetProperty("blocks")[0].GetProperty("shots").GetArrayLength());
        Assert.True(File.Exists(lines[^1].GetProperty("recordFile").GetString()));
    }

    /// <summary>
    /// After a wanted change of the text: <c>AIMTRAINER_WRITE_GOLDEN=$PWD/tests/AimTrainer.Tests/golden dotnet test tests/AimTrainer.Tests</c>,
    /// run once more without it, and look at what git shows as changed. Session ids and the folder are masked.
    /// </summary>
    [Fact]
    public void Demo_SeededSession_LooksAsTheGoldenText()
    {
        var text = Masked(_work.Run("demo", "--once", "--seed", "7").Out);
        var golden = Path.Combine(AppContext.BaseDirectory, "golden", "demo.txt");
        if (Environment.GetEnvironmentVariable("AIMTRAINER_WRITE_GOLDEN") is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, "demo.txt"), text);
        }

        Assert.Equal(File.ReadAllText(golden), text);
    }

    [Fact]
    public void Run_Typed_EveryWordIsFollowedOrExplained()
    {
        var ran = _work.Typed(
            """
            15/7
            ?
            14.2 @17.3 #late
            14.5
            99
            15/7/3
            abc
            help
            void 1 foul
            void 77 x
            void
            correct 2 15/7
            correct 99 3
            width 3
            width third arrow 4,5
            move third arrow 16
            move 3
            pause
            15/7
            resume
            skip
            skip foo
            repeat
            note hello [bold] world
            note
            repeat block
            15,5/7
            leave
            15/7
            """,
            "run", "--drill", "two-point-line");

        Assert.Equal(0, ran.Code);
        string[] said =
        [
            "  1 |....+....+....+....+...=O=...+....+....|  15.00 on centre   centre 3   1 of 15  third arrow, 3 boards wide",
            "found boardAt15 99; allowed: -4 to 44", "found 3 boards; allowed: at most 2: at 15 ft, 40 ft", "found \"abc\"; allowed: a shot such as 10.5",
            "void 7 foul     shot 7 does not count", "     shot 1 does not count: foul", "there is no shot 77: give a number from 1 to 4",
            "void: found \"\"; allowed: the shot's number and why", "     shot 2 corrected; both values are kept", "correct: shot 99 is not among the last ten",
            "width: found \"3\"; allowed: 0.5 to 20 boards, with the target's name before it: third arrow, seven at 40 feet",
            "     third arrow is now board 15 at 15 ft, 4.5 boards wide", "     third arrow is now board 16 at 15 ft, 4.5 boards wide",
            "move: found \"3\"; allowed: a board from 0.5 to 39.5, or board@feet", "     paused: shots are set aside", "     set aside, not graded: the session was paused",
            "     going on", "     fifteen to seven passed over", "skip: found \"foo\"; allowed: nothing, or block", "     fifteen to seven once more",
            "     noted: hello [bold] world", "the note is empty: write something", "     Block over: begun again.", "(training, attempt 2)",
            "1 shot came when none counted; kept, not graded.", "Note: hello [bold] world", "The session is left open: go on with aimtrainer run --go-on --station 1",
        ];
        var at = 0;
        foreach (var words in said)
        {
            var found = ran.Out.IndexOf(words, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"not said, or not in this order: {words}\n{ran.Out}");
            at = found;
        }

        Assert.Contains("  5 |", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("  6 |", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_WarmUpByAPerson_AsksForTheArmAndNotesTheAnswer()
    {
        var ran = _work.TypedByAPerson("a bit stiff\n10\nleave\n", "run", "--drill", "easy-warm-up");

        Assert.Contains("How does the arm feel? Your answer is noted. If it hurts, do not throw;", ran.Out, StringComparison.Ordinal);
        Assert.Contains("noted: arm before the first shot: a bit stiff", ran.Out, StringComparison.Ordinal);
        Assert.Contains("  1 |", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_ByAPerson_AnotherUntilQ()
    {
        var ran = _work.TypedByAPerson("\nq\n", "demo", "--pace", "0");
        var once = _work.TypedByAPerson("\n\n\nq\n", "demo", "--once", "--pace", "0");

        Assert.Equal((0, 0), (ran.Code, once.Code));
        Assert.Equal(2, ran.Out.Split("Enter for another session").Length - 1);
        Assert.Equal(3, _work.Run("sessions", "list", "--json").Json().GetArrayLength());
    }

    [Fact]
    public void Run_LeftOpen_RefusesAnotherGoesOnAndShowsTheAim()
    {
        _work.Typed("15/7\n14/8\n", "run", "--drill", "two-point-line", "--bowler", "A");

        var another = _work.Typed("", "run", "--drill", "two-point-line");
        var demo = _work.Run("demo", "--once", "--station", "2");
        var demoThere = _work.Run("demo", "--once");
        var goesOn = _work.Typed("15/7\nend tired\n", "run", "--go-on");
        var after = _work.Run("run", "--go-on");

        Assert.Equal(2, another.Code);
        Assert.Contains("(two-point-line, A) open: go on with it (--go-on) or end it first (--end-open)", another.Error, StringComparison.Ordinal);
        Assert.Equal((0, 1), (demo.Code, demoThere.Code));
        Assert.Contains(
            "lane 1 was left with a real session open (two-point-line, A), and a demo would end it: go on with it (aimtrainer run --go-on), or show the demo on another lane (demo --station 2)",
            demoThere.Error, StringComparison.Ordinal);
        Assert.Contains("Block 1 of 1: Fifteen to seven (training), 2 of 15 thrown\n    |....+....+....+....+...===...+....+....| aim at third arrow: board 15 at 15 ft", goesOn.Out, StringComparison.Ordinal);
        Assert.Contains("  3 |....+....+....+....+...=O=...+....+....|  15.00 on centre   centre 3   3 of 15", goesOn.Out, StringComparison.Ordinal);
        Assert.Contains("Session over: tired.", goesOn.Out, StringComparison.Ordinal);
        Assert.Equal(2, after.Code);
    }

    [Fact]
    public void Run_GoOnWithAFile_ReadsItByTheLaneAndHandOfTheSession()
    {
        var lane = _work.File("lane.json", """{ "format": 1, "name": "wide", "widthInches": 42, "markers": [{ "kind": "arrow", "boardFromRight": 35, "feet": 12 }, { "kind": "arrow", "boardFromRight": 30, "feet": 13 }] }""");
        var map = _work.File("map.json", """{ "positionsFrom": "right", "columns": { "mark": { "is": "arrowsBoard", "unit": "in" } } }""");
        var shots = _work.File("shots.csv", "mark\n31.5\n");
        _work.Typed("10\n", "run", "--drill", "ten-shot-spread", "--bowler", "A", "--hand", "left", "--lane", lane);

        var wrongHand = _work.Run("run", "--go-on", "--shots", shots, "--map", map, "--hand", "right");
        var wrongLane = _work.Run("run", "--go-on", "--shots", shots, "--map", map, "--lane", _work.File("other.json", """{ "format": 1, "name": "other", "widthInches": 41, "markers": [] }"""));
        var ran = _work.Run("run", "--go-on", "--shots", shots, "--map", map);

        Assert.Equal((2, 2, 0), (wrongHand.Code, wrongLane.Code, ran.Code));
        Assert.Contains("--hand: the session that was left is of a left-hander", wrongHand.Error, StringComparison.Ordinal);
        Assert.Contains("the session that was left has another lane profile", wrongLane.Error, StringComparison.Ordinal);

        // 31.5 in from the right of 42 in is 10.5 in from the left: 10.5 / (42 / 39) + 0.5 = 10.25 boards, by hand.
        var crossing = _work.Run("sessions", "show", "last", "--json").Json().GetProperty("blocks")[0].GetProperty("shots")[1].GetProperty("targets")[0];
        Assert.Equal(10.25, crossing.GetProperty("crossingBoard").GetDouble());
    }

    [Fact]
    public void Run_EndOpen_EndsTheOldOneAndStartsAnew()
    {
        _work.Typed("15/7\n", "run", "--drill", "two-point-line");

        var ran = _work.Typed("", "run", "--drill", "stairs", "--end-open");

        Assert.Equal(0, ran.Code);
        Assert.Equal([false, true], _work.Run("sessions", "list", "--json").Json().EnumerateArray().Select(session => session.GetProperty("ended").GetBoolean()));
    }

    [Fact]
    public void Run_ShotsFileAndSimulate_RunToTheEnd()
    {
        var shots = _work.File("s.csv", "arrowsBoard\n" + string.Concat(Enumerable.Range(0, 10).Select(i => $"{10 + (i / 10.0):0.0}\n")) + "bad\n");

        var file = _work.Run("run", "--drill", "ten-shot-spread", "--shots", shots);
        var simulated = _work.Run("run", "--drill", "ten-shot-spread", "--simulate", "--json");

        Assert.Equal(0, file.Code);
        Assert.Contains("Session over: all blocks were thrown.", file.Out, StringComparison.Ordinal);
        Assert.True(simulated.JsonLines()[^1].GetProperty("simulated").GetBoolean());
    }

    [Fact]
    public void Export_RecordedThenReplayed_SameGrades()
    {
        _work.Typed("15/7\n14.2/9.1 @17.3 #late, \"wide\"\n?/6\nvoid 2 foul\n13/4\n15/7\n15/7\nend\n", "run", "--drill", "two-point-line");
        var shown = _work.Run("sessions", "show", "last", "--json").Json();

        var csv = Path.Combine(_work.Folder, "out.csv");
        var export = _work.Run("sessions", "export", "last", "--format", "csv", "--out", csv);
        var replay = _work.Run("replay", "--drill", "two-point-line", "--shots", csv, "--json").Json();

        Assert.Equal(0, export.Code);
        Assert.Equal(Grades(shown).Where(grade => !grade.Void).Select(grade => grade.Text), Grades(replay).Select(grade => grade.Text));
        Assert.Equal(5, replay.GetProperty("shots").GetInt32());
    }

    [Fact]
    public void Import_ThenShown_SameAsReplay()
    {
        var csv = _work.File("s.csv", "time,arrowsBoard,boardAt40\n2026-03-01T18:00:00Z,15,7\n2026-03-01T18:01:00Z,14,\n2026-03-01T18:02:00Z,,6\n");

        var import = _work.Run("shots", "import", csv, "--drill", "two-point-line", "--json");
        var again = _work.Run("shots", "import", csv, "--drill", "two-point-line");
        var shown = _work.Run("sessions", "show", "last", "--json").Json();
        var replay = _work.Run("replay", "--drill", "two-point-line", "--shots", csv, "--json").Json();

        Assert.Equal(0, import.Code);
        Assert.Equal(3, import.Json().GetProperty("blocks")[0].GetProperty("shots").GetArrayLength());
        Assert.Equal(2, again.Code);
        Assert.Contains("was imported before with this drill", again.Error, StringComparison.Ordinal);
        foreach (var key in (string[])["shots", "summary"])
        {
            Assert.Equal(
                JsonSerializer.Serialize(replay.GetProperty("blocks")[0].GetProperty(key)), JsonSerializer.Serialize(shown.GetProperty("blocks")[0].GetProperty(key)));
        }
    }

    [Fact]
    public void Backup_Restored_HasTheSameSessions()
    {
        _work.Run("demo", "--once", "--seed", "7");
        var file = Path.Combine(_work.Folder, "copy.db");

        var backup = _work.Run("backup", file, "--json");
        var twice = _work.Run("backup", file);
        var before = _work.Run("sessions", "list", "--json").Out;
        _work.Run("demo", "--once", "--seed", "8");
        var restore = _work.Run("restore", file, "--json");

        Assert.Equal((0, 1, 0), (backup.Code, twice.Code, restore.Code));
        Assert.Equal(1, backup.Json().GetProperty("sessions").GetInt32());
        Assert.True(File.Exists(restore.Json().GetProperty("replaced").GetString()));
        Assert.Equal(before, _work.Run("sessions", "list", "--json").Out);
        Assert.Equal(1, _work.Run("restore", _work.File("no.db", "not a database")).Code);
    }

    private static IEnumerable<(bool Void, string Text)> Grades(JsonElement record) => record.GetProperty("blocks").EnumerateArray()
        .SelectMany(block => block.GetProperty("shots").EnumerateArray())
        .Select(shot => (shot.TryGetProperty("void", out _), JsonSerializer.Serialize(shot.GetProperty("targets"))));

    private static IEnumerable<string> Rows(string csv) => csv.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1);

    private string Masked(string text) => SessionId().Replace(text.Replace(_work.Folder, "FOLDER", StringComparison.Ordinal), "SESSION");

    [GeneratedRegex(@"\d{8}-\d{6}-[0-9a-f]{6}")]
    private static partial Regex SessionId();
}
