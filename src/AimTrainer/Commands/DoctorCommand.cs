using System.CommandLine;
using AimTrainer.Doctor;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Looks at everything that a host or a display needs, and says what to do.</summary>
internal static class DoctorCommand
{
    public static Command Create(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command(
            "doctor", "Look at the data folder, the disk, the record or its database (--record), ports, drawing, monitors, maps, sound and the clock, and say what to do. Exit code 1 when something fails.") { json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var (place, record) = (DataPlace.Of(parsed), RecordOption.Of(parsed));
            var data = new DataDoctor(place, TimeProvider.System, record is not null);
            var lines = data.Look().ToList();
            if (record is not null)
            {
                var database = new DatabaseDoctor(record, TimeProvider.System);
                lines.AddRange(await database.LookAsync(cancellationToken).ConfigureAwait(false));
                data.NewestSession = database.NewestSession;
            }

            lines.AddRange(new NetworkDoctor(place, data.IsHeld).Look(Environment.GetEnvironmentVariable));
            lines.AddRange(await console.MainThread.DoAsync(new DisplayDoctor(place, TimeProvider.System).Look).ConfigureAwait(false));
            lines.Add(data.Clock());
            var failed = lines.Exists(line => line.State == DoctorState.Fail);
            if (parsed.GetValue(json))
            {
                Json.Print(console, new { Well = !failed, Lines = lines });
            }
            else
            {
                Print(console, lines);
            }

            return failed ? ExitCodes.Failed : ExitCodes.Ok;
        });
        return command;
    }

    private static void Print(UserConsole console, List<DoctorLine> lines)
    {
        foreach (var line in lines)
        {
            console.Out.WriteLine($"{Json.Word(line.State),-5} {line.Name}: {line.Found}");
            if (line.ToDo is { } todo)
            {
                console.Out.WriteLine($"      {todo}");
            }
        }

        var (failed, warned) = (lines.Count(line => line.State == DoctorState.Fail), lines.Count(line => line.State == DoctorState.Warn));
        console.Out.WriteLine(failed > 0 ? $"{failed} to be put right, {warned} to look at" : warned > 0 ? $"it works; {warned} to look at" : "all is well");
    }
}
