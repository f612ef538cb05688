using System.CommandLine;
using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Reports;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Where the misses of a stored session came from.</summary>
internal static class WhyCommand
{
    public static Command Create(UserConsole console)
    {
        var (id, noise, leftRight, json) = (SessionCommands.Id(), Noise(), LeftRight(), CommonOptions.Json());
        var command = new Command("why", "Where the misses of a stored session came from: laydown, angle, or the ball (docs/analysis.md).") { id, noise, leftRight, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(parsed);
            var (setup, drill, record) = await SessionCommands.ReadAsync(store, parsed.GetValue(id)!, cancellationToken).ConfigureAwait(false);
            var sides = parsed.GetValue(leftRight) ? SideNames.LeftRight : SideNames.InsideOutside;
            if (parsed.GetValue(json))
            {
                console.Out.WriteLine(JsonSerializer.Serialize(SessionFigures.Of(setup, record, parsed.GetValue(noise), sides), FigureJson.Plain));
            }
            else
            {
                var settings = new AccuracySettings { Lane = setup.Lane, NoiseBoards = parsed.GetValue(noise) };
                Say(console, setup, drill, SessionLine.Of(setup, record), settings, new MissWords(setup.Lane, setup.Hand, sides));
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>The option for a sensor's noise.</summary>
    public static Option<double?> Noise() => CommonOptions.Number("--noise", "Standard deviation of the error of each measured board, when it is known, boards.", 0, 2, "BOARDS");

    /// <summary>The option for how sides are called.</summary>
    public static Option<bool> LeftRight() => new("--left-right") { Description = "Say left and right as the bowler sees them, instead of inside and outside." };

    private static void Say(UserConsole console, SessionSetup setup, DrillScript drill, IReadOnlyList<SessionLine> lines, AccuracySettings settings, MissWords words)
    {
        var text = new WhyText(console);
        text.Line($"{drill.Name} ({drill.Id}) for {setup.Bowler}, {Words.Of(setup.Hand)} hand"
            + $"{(setup.Simulated ? ", simulated: every shot is invented" : "")}; session {setup.SessionId}");
        if (lines.Count == 0)
        {
            text.Line("No shot of this session counts, so there is nothing to split.");
        }

        foreach (var line in lines)
        {
            var study = line.Study(settings);
            text.Set($"{line.Name}: {line.Line}", study.Set!);
            var misses = new WhyMisses(text, words, study.Plan?.Kind ?? PlanKind.StraightThroughTargets, int.MaxValue);
            foreach (var (number, shot) in line.Shots)
            {
                misses.Add($"shot {number}", shot, study.Split(shot));
            }

            misses.Finish(study.WithoutGross);
        }
    }
}
