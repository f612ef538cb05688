using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Motion.Tests;

public sealed class PathCasesTests
{
    /// <summary>What is asked of a path: 1e-3 board and 1e-3 degree.</summary>
    private const double Asked = 1e-3;

    public static TheoryData<string> Names() => new(PathCases.Names);

    [Fact]
    public void Cases_OfTheFile_AreAllThere() => Assert.Equal(
        ["01_nospin_uniform", "02_nospin_textbook", "04_hook_uniform_const", "05_hook_rg_tilt_const", "06_never_rolls", "09_twozone_step", "12_house_RH", "13_house_LH_mirror"],
        PathCases.Names);

    [Theory]
    [MemberData(nameof(Names))]
    public void Trace_CaseOfIndependentIntegrator_AgreesEverywhere(string name)
    {
        var worst = Worst(PathCases.Case(name), null);
        Assert.All(worst, one => Assert.True(one.Value < Asked, $"{one.Key} is off by {one.Value:e1}"));
    }

    [Theory]
    [InlineData("01_nospin_uniform", null, 1e-10)]
    [InlineData("02_nospin_textbook", null, 1e-10)]
    [InlineData("04_hook_uniform_const", null, 1e-10)]
    [InlineData("05_hook_rg_tilt_const", null, 1e-10)]
    [InlineData("06_never_rolls", null, 1e-10)]
    [InlineData("09_twozone_step", null, 1e-10)]
    [InlineData("12_house_RH", null, 5e-5)]
    [InlineData("13_house_LH_mirror", null, 5e-5)]
    [InlineData("12_house_RH", 0.1, 2e-6)]
    [InlineData("12_house_RH", 0.01, 1e-8)]
    public void Trace_CaseOfIndependentIntegrator_ReachesTheDigitsOfTheDocs(string name, double? stepMetres, double board)
    {
        var worst = Worst(PathCases.Case(name), stepMetres);
        Assert.True(worst["board at 60"] < board, $"board at 60 ft is off by {worst["board at 60"]:e1}");
        Assert.True(worst["angle at 60"] < 1e-10, $"angle at 60 ft is off by {worst["angle at 60"]:e1}");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Trace_CaseOfIndependentIntegrator_HappensOrNotAlike(string name)
    {
        var one = PathCases.Case(name);
        var expect = one.GetProperty("expect");
        var end = Paths.Trace(PathCases.Lane(one.GetProperty("lane").GetString()!), PathCases.BallOf(one), PathCases.ReleaseOf(one)).End;

        Assert.Equal(expect.GetProperty("end").GetString() == "pins", end.Finish == PathFinish.Pins);
        Assert.Equal(expect.GetProperty("break_board").ValueKind == JsonValueKind.Null, double.IsNaN(end.BreakpointBoard));
        Assert.Equal(expect.GetProperty("roll_x_m").ValueKind == JsonValueKind.Null, double.IsNaN(end.RollFeet));
        Assert.Equal(expect.GetProperty("headpin_contact").ValueKind == JsonValueKind.Null, double.IsNaN(end.ContactBoard));
    }

    [Fact]
    public void FrictionAt_ProbesOfTheHouseLane_HasTheirDigits()
    {
        var lane = PathCases.Lane("house40");
        var probes = PathCases.Root.GetProperty("mu_probes").EnumerateArray().Where(probe => probe.GetProperty("lane").GetString() == "house40").ToList();
        Assert.Equal(8, probes.Count);
        foreach (var probe in probes)
        {
            var (feet, board) = (PathCases.Number(probe, "x_m") / 0.3048, PathCases.Number(probe, "board_from_right"));
            Assert.Equal(PathCases.Number(probe, "mu"), lane.FrictionAt(feet, board), 1e-12);
            Assert.Equal(PathCases.Number(probe, "oil"), lane.OilAt(feet, board), 1e-9);
        }
    }

    private static Dictionary<string, double> Worst(JsonElement one, double? stepMetres)
    {
        var expect = one.GetProperty("expect");
        var release = PathCases.ReleaseOf(one);
        var path = Paths.Trace(PathCases.Lane(one.GetProperty("lane").GetString()!, stepMetres), PathCases.BallOf(one), release);
        var end = path.End;
        var worst = new Dictionary<string, double>
        {
            ["arrows"] = Off(end.ArrowsBoard, PathCases.Number(expect, "arrows_board")),
            ["breakpoint"] = Off(end.BreakpointBoard, PathCases.Number(expect, "break_board")),
            ["breakpoint feet"] = Off(end.BreakpointFeet, PathCases.Number(expect, "break_x_ft")),
            ["roll seconds"] = Off(end.RollSeconds, PathCases.Number(expect, "roll_t")),
            ["roll metres"] = Off(end.RollFeet * 0.3048, PathCases.Number(expect, "roll_x_m")),
            ["board at 60"] = Off(end.BoardAt60, PathCases.Number(expect, "end_board")),
            ["angle at 60"] = Off(end.AngleAt60Degrees, PathCases.Number(expect, "end_angle_deg")),
            ["seconds"] = Off(end.EndSeconds, PathCases.Number(expect, "end_t")),
            ["speed"] = Off(end.EndMetresPerSecond, PathCases.Number(expect, "end_speed")),
            ["speed loss"] = Off(path.SpeedLossMph, PathCases.Number(expect, "speed_loss_mph")),
            ["slip at laydown"] = Off(path.SlipAtLaydownMetresPerSecond, PathCases.Number(expect, "slip0")),
            ["slip at 60"] = Off(end.EndSlipMetresPerSecond, PathCases.Number(expect, "end_slip")),
            ["hook"] = Off(path.HookBoards, PathCases.Number(expect, "hook_vs_launch_line_boards")),
            ["energy at laydown"] = Off(path.EnergyAtLaydownJoules, PathCases.Number(expect, "E0_J")),
            ["energy at 60"] = Off(path.EnergyAtEndJoules, PathCases.Number(expect, "E1_J")),
        };
        if (expect.GetProperty("headpin_contact") is { ValueKind: JsonValueKind.Object } contact)
        {
            worst["contact board"] = Off(end.ContactBoard, PathCases.Number(contact, "board"));
            worst["contact angle"] = Off(end.ContactAngleDegrees, PathCases.Number(contact, "angle_left_deg") * (release.Hand == Hand.Right ? 1 : -1));
            worst["contact metres"] = Off(end.ContactFeet * 0.3048, PathCases.Number(contact, "x"));
        }

        foreach (var point in one.GetProperty("path_ft_t_board").EnumerateArray())
        {
            var at = path.At(point[0].GetDouble());
            worst[$"board at {point[0]} ft"] = Off(at.Board, point[2].GetDouble());
            worst[$"seconds at {point[0]} ft"] = Off(at.Seconds, point[1].GetDouble());
        }

        return worst;
    }

    /// <summary>How far apart; none when both did not happen, endless when one did.</summary>
    private static double Off(double found, double expected) =>
        double.IsNaN(found) && double.IsNaN(expected) ? 0 : double.IsNaN(found) || double.IsNaN(expected) ? double.PositiveInfinity : Math.Abs(found - expected);
}
