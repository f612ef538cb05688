using System.CommandLine;
using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Output;
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
            var settings = new AccuracySettings { Lane = setup.Lane, NoiseBoards = parsed.GetValue(noise) };
            var words = new MissWords(setup.Lane, setup.Hand, parsed.GetValue(leftRight) ? SideNames.LeftRight : SideNames.InsideOutside);
            var lines = WhyLine.Of(setup, record);
            if (parsed.GetValue(json))
            {
                Print(console, setup, drill, lines, settings, words);
            }
            else
            {
                Say(console, setup, drill, lines, settings, words);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    /// <summary>The option for a sensor's noise.</summary>
    public static Option<double?> Noise() => CommonOptions.Number("--noise", "Standard deviation of the error of each measured board, when it is known, boards.", 0, 2, "BOARDS");

    /// <summary>The option for how sides are called.</summary>
    public static Option<bool> LeftRight() => new("--left-right") { Description = "Say left and right as the bowler sees them, instead of inside and outside." };

    private static void Say(UserConsole console, SessionSetup setup, DrillScript drill, IReadOnlyList<WhyLine> lines, AccuracySettings settings, MissWords words)
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
            var misses = new WhyMisses(text, words, study.Set!.Plan?.Kind ?? PlanKind.StraightThroughTargets, int.MaxValue);
            foreach (var (number, shot) in line.Shots)
            {
                misses.Add($"shot {number}", shot, study.Split(shot));
            }

            misses.Finish(study.WithoutGross());
        }
    }

    private static void Print(UserConsole console, SessionSetup setup, DrillScript drill, IReadOnlyList<WhyLine> lines, AccuracySettings settings, MissWords words)
    {
        using var output = new BufferedStream(console.OpenOut(), 1 << 16);
        using (var writer = new Utf8JsonWriter(output, Json.Indented))
        {
            writer.WriteStartObject();
            writer.WriteString("session"u8, setup.SessionId);
            writer.WriteString("bowler"u8, setup.Bowler);
            writer.WriteBoolean("simulated"u8, setup.Simulated);
            writer.WriteString("drill"u8, drill.Id);
            writer.WriteString("hand"u8, Words.Of(setup.Hand));
            AnalyseJson.Write(writer, "noiseBoards", settings.NoiseBoards);
            writer.WriteStartArray("lines"u8);
            foreach (var line in lines)
            {
                var study = line.Study(settings);
                writer.WriteStartObject();
                writer.WriteString("name"u8, line.Name);
                AnalyseJson.Write(writer, "causes", study.Set);
                writer.WriteStartArray("splits"u8);
                foreach (var (number, shot) in line.Shots)
                {
                    AnalyseJson.WriteShot(writer, number, null, shot, study.Split(shot), words, study.Set!.Plan?.Kind ?? PlanKind.StraightThroughTargets);
                }

                writer.WriteEndArray();
                AnalyseJson.Write(writer, "causesWithoutGrossMisses", study.WithoutGross());
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }
}
