using System.Text.Json;

namespace AimTrainer.Tests;

public sealed class LineTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Line_Json_HasTheDocumentedShapeAndPublishedNumbers()
    {
        var json = _work.Run("line", "15@15", "7@40", "--pattern", "38", "--json").Json();

        // Source: the trade reference, derived: 15 to 7 at 40 ft is laid down on 19.8, 1.6254 degrees, 5.4 at 45 ft, slide 26.8 with 7 boards.
        Assert.Equal("right", json.GetProperty("hand").GetString());
        Assert.Equal("15@15 7@40", json.GetProperty("line").GetString());
        Assert.Equal(19.8, json.GetProperty("laydownBoard").GetDouble());
        Assert.Equal(1.625, json.GetProperty("launchAngleDeg").GetDouble());
        Assert.Equal(26.8, json.GetProperty("slideBoard").GetDouble());
        Assert.Equal(5.4, At(json.GetProperty("boards"), 45).GetProperty("board").GetDouble());

        // Source: the trade reference: 38 ft less 31 is board 7.
        var exit = json.GetProperty("exit");
        Assert.Equal((38.0, 7.0, 0.64), (exit.GetProperty("feet").GetDouble(), exit.GetProperty("board").GetDouble(), exit.GetProperty("lineInsideBoards").GetDouble()));
    }

    [Fact]
    public void Line_JsonMoves_DoWhatThePublishedRulesSay()
    {
        var moves = _work.Run("line", "15@15", "7@40", "--json").Json().GetProperty("moves").EnumerateArray().ToDictionary(move => move.GetProperty("name").GetString()!);

        // Source: the trade reference, derived: 2-and-1 at 40/45/60 ft: -0.667/-1/-2 and 0.339 degrees; 3-and-2 at 45/60: 0/-1; 2-and-2: 2 all along.
        Assert.Equal((-0.6667, -1.0, -2.0), (Shift(moves["2-and-1"], 40), Shift(moves["2-and-1"], 45), Shift(moves["2-and-1"], 60)));
        Assert.Equal((0.0, -1.0), (Shift(moves["3-and-2"], 45), Shift(moves["3-and-2"], 60)));
        Assert.Equal((2.0, 2.0), (Shift(moves["2-and-2"], 0), Shift(moves["2-and-2"], 60)));
        Assert.Equal(1.625 + 0.3387, moves["2-and-1"].GetProperty("launchAngleDeg").GetDouble(), 0.001);
        Assert.True(moves["2-and-2"].GetProperty("parallel").GetBoolean());
        Assert.False(moves["2-and-1"].GetProperty("parallel").GetBoolean());
    }

    [Fact]
    public void Line_EitherHand_HasTheSameBoardsFromItsOwnEdge()
    {
        var right = _work.Run("line", "20@15", "10@42", "--json").Json();
        var left = _work.Run("line", "20@15", "10@42", "--json", "--hand", "left").Json();

        Assert.Equal(right.GetProperty("laydownBoard").GetDouble(), left.GetProperty("laydownBoard").GetDouble());
        Assert.Equal(
            41.5, At(right.GetProperty("boards"), 40).GetProperty("acrossInches").GetDouble() + At(left.GetProperty("boards"), 40).GetProperty("acrossInches").GetDouble(), 1e-9);
    }

    [Fact]
    public void Line_Walk_KeepsWhatItShould()
    {
        var breakpoint = _work.Run("line", "15@15", "7@40", "--json", "--walk", "breakpoint").Json().GetProperty("walk").EnumerateArray().ToList();
        var angle = _work.Run("line", "15@15", "7@40", "--json", "--walk", "angle").Json().GetProperty("walk").EnumerateArray().ToList();

        Assert.Equal([10, 12.5, 15, 17.5, 20], breakpoint.Select(line => line.GetProperty("arrowsBoard").GetDouble()));
        Assert.All(breakpoint, line => Assert.EndsWith(" 7@40", line.GetProperty("line").GetString(), StringComparison.Ordinal));
        Assert.Equal([10, 12.5, 15, 17.5, 20], angle.Select(line => line.GetProperty("arrowsBoard").GetDouble()));
        Assert.All(angle, line => Assert.Equal(1.625, line.GetProperty("launchAngleDeg").GetDouble()));
    }

    [Fact]
    public void Line_Text_SaysLaydownAngleSlideAndMoves()
    {
        var ran = _work.Run("line", "20@15", "10@42", "--slide-distance", "6", "--move", "2,1", "--walk", "angle");

        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("laydown          board 25.56 at the foul line", ran.Out, StringComparison.Ordinal);
        Assert.Contains("slide foot       board 31.56, with 6 boards", ran.Out, StringComparison.Ordinal);
        Assert.Contains("2-and-1  angular  21@15 9.2@42", ran.Out, StringComparison.Ordinal);
        Assert.Contains("keeping the angle:", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Line_LaydownOffTheBoards_IsSaid()
    {
        var ran = _work.Run("line", "35@15", "10@42");
        Assert.Contains("off the boards   at the foul line: nobody can lay the ball down there", ran.Out, StringComparison.Ordinal);
        Assert.Equal(0, _work.Run("line", "35@15", "10@42", "--json").Json().GetProperty("offTheLaneFeet").GetDouble());
    }

    [Theory]
    [InlineData("20", "10", "line: found 20; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15")]
    [InlineData("20@15", "10@61", "line: found 10@61; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15")]
    [InlineData("40@15", "10@42", "line: found 40@15; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15")]
    [InlineData("NaN@15", "10@42", "line: found NaN@15; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 20@15")]
    [InlineData("10@42", "20@15", "line: found 20@15 after 10@42; allowed: targets that lie farther and farther down")]
    [InlineData("20@15", "10@15", "line: found 10@15 after 20@15; allowed: targets that lie farther and farther down")]
    [InlineData("1@15", "39@15.1", "line: 1@15 39@15.1 runs too far across the lane to be a line; choose targets that lie farther apart downlane")]
    public void Line_BadTargets_AreRefusedInOneLine(string near, string far, string message)
    {
        var ran = _work.Run("line", near, far);
        Assert.Equal((2, "", message + "\n"), (ran.Code, ran.Out, ran.Error));
    }

    [Theory]
    [InlineData("--move", "2")]
    [InlineData("--move", "2,x")]
    [InlineData("--move", "2,99")]
    [InlineData("--walk", "moon")]
    [InlineData("--pattern", "60")]
    [InlineData("--slide-distance", "-1")]
    public void Line_BadOption_SaysWhatIsAllowed(string option, string value)
    {
        var ran = _work.Run("line", "20@15", "10@42", option, value);
        Assert.Equal((2, ""), (ran.Code, ran.Out));
        Assert.StartsWith(option, ran.Error, StringComparison.Ordinal);
        Assert.Contains("allowed:", ran.Error, StringComparison.Ordinal);
    }

    private static double Shift(JsonElement move, double feet) => At(move.GetProperty("shifts"), feet).GetProperty("boards").GetDouble();

    private static JsonElement At(JsonElement list, double feet) => list.EnumerateArray().Single(one => one.GetProperty("feet").GetDouble() == feet);
}
