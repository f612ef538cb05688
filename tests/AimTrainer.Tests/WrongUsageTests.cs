namespace AimTrainer.Tests;

public sealed class WrongUsageTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Theory]
    [InlineData("", "a command is needed: demo, run, serve")]
    [InlineData("replya", "replya: no such command; did you mean replay?")]
    [InlineData("drill chek", "chek: no such command; did you mean check?")]
    [InlineData("drill", "a command is needed: list, show, check (see: aimtrainer drill --help)")]
    [InlineData("calibrate --monitor 1 --from 70", "--from: found 70")]
    [InlineData("replay --drill x --shot y", "--shot: no such option; did you mean --shots?")]
    [InlineData("demo extra", "extra: one word too many")]
    [InlineData("demo --seed -1", "--seed: found -1; allowed: a whole number from 0 to 18446744073709551615")]
    [InlineData("demo --hand up", "--hand: found up; allowed: right, left")]
    [InlineData("demo --station 65", "--station: found 65; allowed: a whole number from 1 to 64")]
    [InlineData("demo --pace nan", "--pace: found nan; allowed: 0 to 60")]
    [InlineData("demo --breakpoint 8", "--breakpoint: found 8; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 8@42")]
    [InlineData("demo --pattern 31,5", "--pattern: found 31,5; allowed: 32 to 52")]
    [InlineData("demo --drill ten-shot-spred", "ten-shot-spred: no such file, and no drill of that id; did you mean ten-shot-spread?")]
    [InlineData("demo --drill zzz", "zzz: no such file, and no drill of that id; allowed: a drill file, or one of arrows-and-downlane,")]
    [InlineData("run", "--drill is needed to start a session")]
    [InlineData("run --go-on --drill x", "--go-on goes on with the session and the drill that were left")]
    [InlineData("run --go-on --bowler Ben --seed 3", "--bowler, --seed: --go-on goes on with the session as it was left: leave them out")]
    [InlineData("run --go-on", "station 1 was left with no open session")]
    [InlineData("run --drill x --shots a --follow b", "--shots, --follow, --simulate and --lines: give one of them")]
    [InlineData("sessions list", "no record here yet; run a session first")]
    [InlineData("sessions export last --format xml", "--format: found xml; allowed: csv, json")]
    [InlineData("backup here.db", "no record here yet; run a session first")]
    [InlineData("restore /no/such/file", "/no/such/file: no such file")]
    [InlineData("shots map /no/such/file", "/no/such/file: no such file")]
    [InlineData("shots import /no/such/file --drill stairs", "/no/such/file: no such file")]
    [InlineData("demo --lane /", "/: is a folder; name a file")]
    [InlineData("replay --drill / --shots x", "/: is a folder; name a drill file in it")]
    [InlineData("demo --once --drill pattern-exit", "its length is not known: give the session's pattern length")]
    public void Run_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        var ran = _work.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal(2, ran.Code);
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        Assert.Equal(ran.Error.Length - 1, ran.Error.IndexOf('\n', StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(" ", "found nothing")]
    [InlineData("A\u001b[2J", "found control characters")]
    public void Run_NamesThatAreNone_OneLineAndExitCode2(string name, string words)
    {
        string[][] lines = [["demo", "--bowler", name], ["demo", "--ball", name], ["sessions", "list", "--bowler", name], ["replay", "--drill", "x", "--shots", "y", "--bowler", name]];
        foreach (var line in lines)
        {
            var ran = _work.Run(line);

            Assert.Equal(2, ran.Code);
            Assert.Contains(words, ran.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("demo")]
    [InlineData("run")]
    [InlineData("replay")]
    [InlineData("drill")]
    [InlineData("drill list")]
    [InlineData("drill show")]
    [InlineData("drill check")]
    [InlineData("shots")]
    [InlineData("shots import")]
    [InlineData("shots map")]
    [InlineData("sessions")]
    [InlineData("sessions list")]
    [InlineData("sessions show")]
    [InlineData("sessions export")]
    [InlineData("backup")]
    [InlineData("restore")]
    public void Help_EveryCommand_SaysWhatItDoes(string command)
    {
        var ran = _work.Run([.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);

        Assert.Equal(0, ran.Code);
        Assert.Matches(@"^Description:\n  \S.{20,}", ran.Out.ReplaceLineEndings("\n"));
        Assert.Matches($@"Usage:\n  \S+ {command}", ran.Out.ReplaceLineEndings("\n"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("arrowsBoard\n")]
    [InlineData("\0\u0001\u0002binary")]
    [InlineData("name\nx\n")]
    public void Replay_FileWithoutAnyShot_SaysSoAndPrintsNothing(string text)
    {
        var ran = _work.Run("replay", "--drill", "two-point-line", "--shots", _work.File("s.csv", text), "--json");

        Assert.Equal(2, ran.Code);
        Assert.Equal("", ran.Out);
        Assert.Contains("s.csv: no shot in it could be read", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Data_NotAFolder_WorkFailed()
    {
        _work.File("data", "");

        var ran = _work.Run("demo", "--once");

        Assert.Equal(1, ran.Code);
        Assert.Contains("data: this folder cannot be used for data", ran.Error, StringComparison.Ordinal);
    }
}
