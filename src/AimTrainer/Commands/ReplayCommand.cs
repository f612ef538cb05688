using System.CommandLine;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Runs a drill over recorded shots and prints what comes of it; nothing is stored.</summary>
internal static class ReplayCommand
{
    public static Command Create(UserConsole console)
    {
        var drill = CommonOptions.Drill(required: true);
        var shots = new Option<string>("--shots") { Description = "The shots, CSV (docs/shots.md).", Required = true, HelpName = "FILE" };
        var (hand, lane, seed, map) = (CommonOptions.Hand(), CommonOptions.Lane(), CommonOptions.Seed(), CommonOptions.Map());
        var (pattern, breakpoint, json) = (CommonOptions.Pattern(), CommonOptions.Breakpoint(), CommonOptions.Json());
        var bowler = CommonOptions.Name("--bowler", "Only this bowler's shots, when the file names bowlers.");
        var balls = new SessionOptions().Balls;
        var command = new Command("replay", "Grade recorded shots as a drill would have, without storing anything.")
        {
            drill, shots, hand, lane, seed, map, pattern, breakpoint, bowler, balls, json,
        };
        command.SetAction(parsed =>
        {
            var source = new DrillLibrary(DataPlace.OwnDrills(parsed)).Read(parsed.GetValue(drill)!);
            var laneProfile = LaneFile.Read(parsed.GetValue(lane));
            var file = parsed.GetValue(shots)!;
            using var stream = UserFiles.OpenRead(file);
            var settings = CsvFiles.Settings(laneProfile, parsed.GetValue(hand), parsed.GetValue(map));
            using var items = ReadAhead.Of(CsvShots.Read(stream, file, settings)).GetEnumerator();
            var first = FirstShots.Of(items, parsed.GetValue(bowler));
            var setup = new SessionSetup
            {
                SessionId = "replay",
                Station = 1,
                At = DateTimeOffset.UnixEpoch,
                Bowler = parsed.GetValue(bowler) ?? first.Bowler ?? "unknown",
                Hand = parsed.GetValue(hand) ?? first.Hand ?? Hand.Right,
                Balls = parsed.GetValue(balls) ?? [],
                DrillId = source.Script.Id,
                DrillHash = source.Hash,
                Lane = laneProfile,
                Seed = parsed.GetValue(seed) ?? 1,
                RecordedBreakpoint = parsed.GetValue(breakpoint),
                PatternLength = parsed.GetValue(pattern) is { } feet ? Feet.FromFeet(feet) : null,
            };
            var opening = SessionCore.Open(setup, source.Script);
            return opening.State is { } state
                ? Run(console, state, first, file, parsed.GetValue(json))
                : throw UserException.Of(opening.Problems);
        });
        return command;
    }

    private static int Run(UserConsole console, SessionState state, FirstShots first, string file, bool json)
    {
        var problems = 0;
        void Report(FileProblem problem)
        {
            problems++;
            console.Error.WriteLine(problem);
        }

        if (!first.Any)
        {
            first.AndTheRest().OfType<FeedItem.Unreadable>().ToList().ForEach(item => Report(item.Problem));
            throw new UserException($"{file}: no shot in it could be read{(problems > 0 ? ", see above" : "")}");
        }

        var items = first.AndTheRest();
        ReplayOutcome outcome;
        if (json)
        {
            using var output = new BufferedStream(console.OpenOut(), 1 << 16);
            using var writer = new ReplayJsonWriter(output, state.Drill.Id, state.Setup.Hand);
            outcome = Replay.Run(state, items, (_, events) => writer.Add(events), Report, file);
            writer.Finish(outcome);
            output.WriteByte((byte)'\n');
        }
        else
        {
            var record = new SessionRecordBuilder();
            outcome = Replay.Run(state, items, (_, events) => record.Add(events), Report, file);
            new TerminalView(console).Record(state.Setup, state.Drill, record.Result(), $"replayed from {file}");
        }

        outcome.Say(console, problems, file);
        return outcome.Shots == 0 && problems > 0 ? ExitCodes.BadInput : ExitCodes.Ok;
    }
}
