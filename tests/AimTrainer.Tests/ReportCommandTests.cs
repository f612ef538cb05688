using System.Globalization;
using System.Text;

namespace AimTrainer.Tests;

public sealed class ReportCommandTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Report_EveryFormat_WritesTheFileAndSaysWhatItSays()
    {
        Import("Lee", "left", 10);
        foreach (var (ending, begins) in new[] { ("html", "<!DOCTYPE html>"), ("pdf", "%PDF"), ("png", "\u0089PNG"), ("csv", "section,item"), ("json", "{") })
        {
            var file = Path.Combine(_work.Folder, $"lee.{ending}");
            var ran = _work.Run("report", "lee", "--out", file);

            Assert.Equal((0, ""), (ran.Code, ran.Error));
            Assert.StartsWith(begins, Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
            Assert.Contains($"Report written: {file}", ran.Out, StringComparison.Ordinal);
            Assert.Contains("Over 10 shots at board 10 at the arrows the average is 0.50 boards to the right", ran.Out, StringComparison.Ordinal);
            Assert.Contains("Drill: Three rings (aimtrainer run --drill three-rings)", ran.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Report_FormatGiven_GoesBeforeTheEnding()
    {
        Import("Ann", "right", 2);
        var file = Path.Combine(_work.Folder, "page.txt");
        Assert.Equal(0, _work.Run("report", "Ann", "--format", "csv", "--out", file).Code);
        Assert.StartsWith("section,item", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Fact]
    public void Report_Json_AgreesWithTheShots()
    {
        Import("Ann", "right", 10);
        var json = _work.Run("report", "ann", "--json").Json();

        Assert.Equal(("Ann", false), (json.GetProperty("bowler").GetString(), json.GetProperty("simulated").GetBoolean()));
        Assert.Equal(10, json.GetProperty("work").GetProperty("shots").GetInt32());
        var target = Assert.Single(json.GetProperty("lanePicture").GetProperty("targets").EnumerateArray());

        // By hand: misses 0.5 ± 0.1, five each: mean 0.5, s = 0.1 √(10/9).
        Assert.Equal(0.5, target.GetProperty("meanMissBoards").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(0.1 * Math.Sqrt(10 / 9.0), target.GetProperty("spreadBoards").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(0.2, Assert.Single(json.GetProperty("tenShots").GetProperty("sessions").EnumerateArray()).GetProperty("spreadBoards").GetDouble(), 1e-9);
        Assert.Equal("lean", json.GetProperty("workOn").GetProperty("rule").GetString());
    }

    [Fact]
    public void Report_SimulatedOnly_SaysSoAtTheTop()
    {
        _work.Run("demo", "--once", "--seed", "7");
        var file = Path.Combine(_work.Folder, "demo.html");
        var ran = _work.Run("report", "demo bowler", "--out", file);

        Assert.Equal(0, ran.Code);
        Assert.StartsWith("Simulated: every shot in this report is invented.", ran.Out, StringComparison.Ordinal);
        var html = File.ReadAllText(file);
        Assert.True(html.IndexOf("Simulated: every shot", StringComparison.Ordinal) < html.IndexOf("The lane", StringComparison.Ordinal));
    }

    [Fact]
    public void Report_PeriodWithoutSessions_SaysWhatIsMissing()
    {
        Import("Ann", "right", 10);
        var ran = _work.Run("report", "Ann", "--from", "2027-01-01", "--out", Path.Combine(_work.Folder, "none.pdf"));

        Assert.Equal(0, ran.Code);
        Assert.Contains("Missing: No session in this period.", ran.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("report Ann", "report: name a file with --out, or print the figures with --json, one of the two")]
    [InlineData("report Ann --out a.html --json", "report: name a file with --out, or print the figures with --json, one of the two")]
    [InlineData("report Ann --json --format pdf", "--json: prints the figures as JSON; another --format needs --out")]
    [InlineData("report Ann --out a.doc", "a.doc: its ending names no format; end it in .html, .pdf, .png, .csv or .json, or give --format")]
    [InlineData("report Ann --format doc --out a.doc", "--format: found doc; allowed: html, pdf, png, csv, json")]
    [InlineData("report Ann --from 2026-09-02 --to 2026-09-01 --out a.html", "--from, --to: the first day must not lie after the last")]
    [InlineData("report Ann --out a.html", "no record here yet; run a session first")]
    public void Report_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        var ran = _work.Run(line.Split(' '));

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        Assert.Equal(ran.Error.Length - 1, ran.Error.IndexOf('\n', StringComparison.Ordinal));
    }

    [Fact]
    public void Report_NobodyOrNoFolder_SaysWhatToDo()
    {
        Import("Ann", "right", 2);
        Assert.Contains("Bob: no session of this bowler is stored here", _work.Run("report", "Bob", "--json").Error, StringComparison.Ordinal);
        var ran = _work.Run("report", "Ann", "--out", Path.Combine(_work.Folder, "nowhere", "a.html"));
        Assert.Equal((2, true), (ran.Code, ran.Error.Contains("a.html: no such file", StringComparison.Ordinal)));
    }

    /// <summary>Imports shots that cross half a board inside board 10, a tenth to either side in turn.</summary>
    private void Import(string bowler, string hand, int shots)
    {
        var text = new StringBuilder("time,arrowsBoard\n");
        for (var shot = 0; shot < shots; shot++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{new DateTime(2026, 3, 1, 18, shot, 0):yyyy-MM-ddTHH:mm:ssZ},{10.5 + (shot % 2 == 0 ? 0.1 : -0.1):0.00}\n");
        }

        var ran = _work.Run("shots", "import", _work.File("shots.csv", text.ToString()), "--drill", "ten-shot-spread", "--bowler", bowler, "--hand", hand);
        Assert.True(ran.Code == 0, ran.Error);
    }
}
