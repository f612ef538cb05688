using System.Globalization;
using System.Text;

namespace AimTrainer.Tests;

public sealed class FiguresCommandTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Figures_ByBall_PutsShotsApartAsAHandDoes()
    {
        Import("a", "blue", 10.5, 11.5, 10.5, 11.5);
        Import("b", "grey", 9, 9.5, 10, 9.5);

        var (text, json) = (_work.Run("figures", "ann", "--by", "ball"), _work.Run("figures", "Ann", "--by", "ball", "--json").Json());

        var groups = json.GetProperty("accuracy").GetProperty("groups").EnumerateArray().ToList();
        Assert.Equal(["blue", "grey"], groups.Select(group => group.GetProperty("name").GetString()!));

        // By hand: misses at board 10 of 0.5, 1.5, 0.5, 1.5 and of -1, -0.5, 0, -0.5.
        Assert.Equal([1.0, -0.5], groups.Select(group => group.GetProperty("perTarget")[0].GetProperty("constantErrorBoards").GetProperty("value").GetDouble()));
        Assert.Equal((8, 8), (json.GetProperty("shots").GetInt32(), json.GetProperty("newest").GetInt32()));
        Assert.Contains("By ball", text.Out, StringComparison.Ordinal);
        Assert.Contains("grey   at the arrows    4 of 4", text.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("By session", text.Out, StringComparison.Ordinal);
        Assert.Contains("By session", _work.Run("figures", "Ann").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_Session_AreWhatWhyPrints()
    {
        Import("a", "blue", 10.5, 11.5, 10.5, 11.5);

        var figures = _work.Run("figures", "--session", "last", "--json");

        Assert.Equal((0, _work.Run("why", "last", "--json").Out), (figures.Code, figures.Out));
        Assert.Equal(1, figures.Json().GetProperty("accuracy").GetProperty("perTarget")[0].GetProperty("constantErrorBoards").GetProperty("value").GetDouble());
        Assert.Contains("session import-", _work.Run("figures", "--session", "last").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_EmptyPeriod_SaysSo()
    {
        Import("a", "blue", 10.5);

        var ran = _work.Run("figures", "Ann", "--from", "2030-01-01");

        Assert.Equal(0, ran.Code);
        Assert.Contains("No shot that counts", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Ann, right hand: 1 shot\n", _work.Run("figures", "Ann", "--by", "speed").Out, StringComparison.Ordinal);
        Assert.Contains("Not apart by speed: no shot has a speed.", _work.Run("figures", "Ann", "--by", "speed").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("figures", "figures: give a bowler, or a session with --session, one of the two")]
    [InlineData("figures Ann --session last", "figures: give a bowler, or a session with --session, one of the two")]
    [InlineData("figures --session last --from 2026-01-01", "--from, --to: are for a bowler; a session is all of it")]
    [InlineData("figures Ann --by shoe", "--by: found shoe; allowed: drill, block, ball, line, lane-part, speed, ten, session")]
    [InlineData("figures Ann", "no record here yet; run a session first")]
    public void Figures_WrongUsage_OneLineAndExitCode2(string line, string words)
    {
        var ran = _work.Run(line.Split(' '));

        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_UnknownBowler_SaysWhereToLook()
    {
        Import("a", "blue", 10.5);

        Assert.Contains("Somebody: no session of this bowler is stored here", _work.Run("figures", "Somebody").Error, StringComparison.Ordinal);
    }

    private void Import(string name, string ball, params double[] boards)
    {
        var text = new StringBuilder("time,arrowsBoard,ball\n");
        for (var i = 0; i < boards.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"2026-03-0{(name == "a" ? 1 : 4)}T18:{i:00}:00Z,{boards[i]},{ball}\n");
        }

        var ran = _work.Run("shots", "import", _work.File($"{name}.csv", text.ToString()), "--drill", "ten-shot-spread", "--bowler", "Ann");
        Assert.True(ran.Code == 0, ran.Error);
    }
}
