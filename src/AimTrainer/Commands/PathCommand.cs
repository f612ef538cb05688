using System.CommandLine;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Where one ball goes.</summary>
internal static class PathCommand
{
    private const int MostWorn = 500;

    public static Command Create(UserConsole console)
    {
        var release = new Option<string>("--release") { Description = "How the ball leaves the hand (docs/motion.md).", Required = true, HelpName = "FILE" };
        var lane = new Option<string>("--lane") { Description = "Oil and frictions of the lane (docs/motion.md).", Required = true, HelpName = "FILE" };
        var ball = new Option<string?>("--ball") { Description = "The ball (docs/motion.md); without it a 15 lb ball of 8.55 in, radius of gyration 2.50 in.", HelpName = "FILE" };
        var worn = CommonOptions.Whole(
            "--worn", $"How many such shots wore the lane before this one, 0 to {MostWorn}; the lane file says how much one takes.", 0, MostWorn, 0);
        var json = CommonOptions.Json();
        var command = new Command("path", "Work out where a ball goes: boards all along, breakpoint, roll, 60 ft, head pin, time and speed.")
        {
            release, lane, ball, worn, json,
        };
        command.SetAction(parsed =>
        {
            var throws = MotionFiles.Release(parsed.GetValue(release)!);
            var thrown = parsed.GetValue(ball) is { } file ? MotionFiles.Ball(file) : Ball.Usual;
            var path = Traced(MotionFiles.Lane(parsed.GetValue(lane)!), thrown, throws, parsed.GetValue(worn), parsed.GetValue(lane)!, out var surface);
            if (parsed.GetValue(json))
            {
                Json.Print(console, PathAnswer.Of(path));
            }
            else
            {
                PathText.Print(console, path, surface);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static BallPath Traced(LaneSurfaceFile lane, Ball ball, Release release, int worn, string file, out LaneSurface surface)
    {
        if (worn > 0 && lane.Wear is null)
        {
            throw new UserException($"{file}: says nothing of wear; with --worn it needs \"wear\": {{ \"taken_share\": 0 to 1 }} (docs/motion.md)");
        }

        surface = lane.Surface;
        for (var shot = 0; shot < worn; shot++)
        {
            surface = lane.Wear!.After(surface, Paths.Trace(surface, ball, release));
        }

        return Paths.Trace(surface, ball, release);
    }
}
