using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>The emergency stop from this machine's terminal, for every program that works on the data folder, and every display of its host.</summary>
internal static class StopCommand
{
    public static Command Create(UserConsole console)
    {
        var release = new Option<bool>("--release") { Description = "Show projection again, when nobody is on a lane and nobody looks into a projector." };
        var command = new Command(
            "stop", "Hide all projection at once: every station, this machine's windows and displays elsewhere alike, until it is released here or in a console.") { release };
        command.SetAction(parsed =>
        {
            var file = new ProjectionStopFile(DataPlace.Of(parsed));
            var stood = file.Read().Stopped;
            var wanted = !parsed.GetValue(release);
            if (stood != wanted)
            {
                var state = wanted ? ProjectionState.StoppedBy("a command at the host's machine", TimeProvider.System.GetUtcNow()) : ProjectionState.Free;
                if (file.Write(state) is { } problem)
                {
                    throw new UserException($"{problem}: it could not be done so; use the console, or switch the projectors off by hand", ExitCodes.Failed);
                }
            }

            console.Out.WriteLine((stood, wanted) switch
            {
                (false, true) => "All projection is stopped. Go on with: aimtrainer stop --release",
                (true, true) => "All projection is stopped already.",
                (true, false) => "Projection is shown again.",
                _ => "Projection was not stopped.",
            });
            return ExitCodes.Ok;
        });
        return command;
    }
}
