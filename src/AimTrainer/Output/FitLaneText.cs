using System.Globalization;
using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>A fitted lane for people.</summary>
internal static class FitLaneText
{
    private const int MostNamed = 5;

    public static void Print(UserConsole console, string file, LaneFitResult fit, FitShots input)
    {
        var output = console.Out;
        output.WriteLine($"{file}: {Words.Count(fit.Shots, "shot")} fitted{(input.LeftOut.Count > 0 ? $", {input.LeftOut.Count} left out" : "")}.");
        foreach (var (line, why) in input.LeftOut.Take(MostNamed))
        {
            output.WriteLine($"  line {line} left out: {why}");
        }

        if (input.LeftOut.Count > MostNamed)
        {
            output.WriteLine($"  and {input.LeftOut.Count - MostNamed} more: --json has all");
        }

        foreach (var (what, shots) in input.Usual)
        {
            output.WriteLine($"  {what} not measured in {Words.Count(shots, "shot")}: the usual one taken. Where it is wrong, the frictions are as wrong the other way.");
        }

        output.WriteLine();
        foreach (var one in fit.Parameters)
        {
            var value = Number(one.Parameter, one.Value);
            output.WriteLine(!one.Fitted ? $"{Name(one.Parameter),-22} {(double.IsNaN(one.Value) ? "none: the oil does not end" : $"{value}, as in the lane file")}"
                : $"{Name(one.Parameter),-22} {value}, 95 % limits {Limit(one.Parameter, one.Low)} to {Limit(one.Parameter, one.High)}");
            if (one.CannotTell is { } why)
            {
                output.WriteLine($"{"",-22} The shots cannot tell it: {why}.");
            }
        }

        var noise = fit.NoiseGiven
            ? string.Create(CultureInfo.InvariantCulture, $"as given; the misfit is {fit.MisfitShare:0.0} times what it explains")
            : "estimated from these shots";
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"noise of a board",-22} {fit.NoiseBoards:0.00} boards, {noise}"));
        foreach (var (shot, noises) in fit.Misfits.AsEnumerable().Take(MostNamed))
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"  line {input.Shots[shot].Line} stands out by {noises:0.0} noises: misread, or another ball? Take it out and fit again."));
        }

        output.WriteLine();
        output.WriteLine("Valid for this ball's cover and this state of the oil; measured values of speed, revs and rotation are taken as exact (docs/motion.md).");
        output.WriteLine(Cautions.Always[0]);
    }

    private static string Name(LaneParameter parameter) => parameter switch
    {
        LaneParameter.OilFriction => "friction of the oil",
        LaneParameter.DryFriction => "friction of dry boards",
        _ => "pattern end",
    };

    private static string Number(LaneParameter parameter, double value) =>
        value.ToString(parameter == LaneParameter.PatternFeet ? "0.0 ft" : "0.0000", CultureInfo.InvariantCulture);

    private static string Limit(LaneParameter parameter, double? value) => value is { } known ? Number(parameter, known) : "(none)";
}
