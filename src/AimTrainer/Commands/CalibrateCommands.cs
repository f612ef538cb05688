using System.CommandLine;
using AimTrainer.Calibration;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Maps of projectors: fits one to marks, and asks one about points.</summary>
internal static class CalibrateCommands
{
    public static Command Create(UserConsole console)
    {
        var command = new Command(
            "calibrate", "Work out how a projector's picture lies on the lane: with --monitor by placing marks from behind the foul line, else by a command for machines.")
        {
            CalibrateWindowCommands.Check(console), Fit(console), Map(console), List(console), Undo(console), CalibrateWindowCommands.Forget(console),
        };
        CalibrateWindowCommands.Place(command, console);
        return command;
    }

    private static Command Fit(UserConsole console)
    {
        var json = CommonOptions.Json();
        var marks = new Option<string>("--marks")
        {
            Description = "Marks: places on the lane and the pixels that light them, JSON (docs/calibration.md).",
            Required = true,
            HelpName = "FILE",
        };
        var terms = CommonOptions.Whole("--distortion", "Terms of lens distortion to fit, 0, 1 or 2; they need 4, 6 or 8 marks.", 0, FitSettings.MostTerms, 0);
        var limit = CommonOptions.Number("--limit", "Largest error that is accepted, in pixels rms (one mark: 2.4 times as much); 2.5 without it.", 0.01, 100, "PIXELS");
        var least = CommonOptions.Number("--target-pixels", "How many pixels wide a target must at least be; 3 without it.", 1, 100, "PIXELS");
        var output = new Option<string?>("--out") { Description = "Where the map is written; without it the fit is only shown.", HelpName = "FILE" };
        var command = new Command("fit", "Fit the map of a projector to marks, and say how good it is.") { marks, terms, limit, least, output, json };
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(marks)!;
            var file = CalibrationFiles.Marks(name);
            var settings = new FitSettings { Picture = file.Picture, LaneWidth = file.LaneWidth, Stretch = file.Stretch, DistortionTerms = parsed.GetValue(terms) };
            if (parsed.GetValue(limit) is { } pixels)
            {
                settings = settings with { RmsLimitPixels = pixels, WorstLimitPixels = pixels * settings.WorstLimitPixels / settings.RmsLimitPixels };
            }

            var outcome = MapFitter.Fit(file.Marks, settings);
            if (outcome.Fit is not { } fit)
            {
                if (parsed.GetValue(json))
                {
                    Json.Print(console, CalibrationJson.Refused(outcome));
                }

                throw UserException.Of(CalibrationText.Refusals(name, file, outcome));
            }

            var path = parsed.GetValue(output);
            if (path is not null)
            {
                CalibrationFiles.Write(path, SavedMap.Of(fit));
            }

            var showing = parsed.GetValue(least) is { } needed ? new ShowingSettings(needed) : ShowingSettings.Usual;
            var warnings = CalibrationText.Warnings(fit, LaneProfileReader.Default with { Width = file.LaneWidth }, showing).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, CalibrationJson.Fitted(fit, path, warnings, showing));
            }
            else
            {
                CalibrationText.Fit(fit, warnings, showing, console);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Map(UserConsole console)
    {
        var json = CommonOptions.Json();
        var map = new Option<string>("--map") { Description = "A map as calibrate fit writes it.", Required = true, HelpName = "FILE" };
        var points = new Option<string>("--points") { Description = "Places on the lane or pixels, JSON (docs/calibration.md).", Required = true, HelpName = "FILE" };
        var command = new Command("map", "Say which pixel lights a place on the lane, or which place a pixel lights.") { map, points, json };
        command.SetAction(parsed =>
        {
            var saved = CalibrationFiles.Map(parsed.GetValue(map)!);
            var mapped = CalibrationFiles.Points(parsed.GetValue(points)!, saved.LaneWidth).Points.AsEnumerable().Select(point => CalibrationMappedPoint.Of(point, saved)).ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, CalibrationJson.Points(mapped));
            }
            else
            {
                CalibrationText.Points(mapped, console);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command List(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("list", "The saved maps: of which projector, for which monitor, how good.") { json };
        command.SetAction(parsed =>
        {
            var loads = CalibrationFiles.Store(parsed).Newest().AsEnumerable().ToList();
            if (parsed.GetValue(json))
            {
                Json.Print(console, CalibrationJson.Maps(loads));
            }
            else
            {
                CalibrationText.Maps(loads, console);
            }

            var problems = loads.SelectMany(load => load.Broken.AsEnumerable()).ToList();
            problems.ForEach(problem => console.Error.WriteLine(problem));
            return problems.Count == 0 ? ExitCodes.Ok : ExitCodes.BadInput;
        });
        return command;
    }

    private static Command Undo(UserConsole console)
    {
        var station = CommonOptions.Whole("--station", "The station (lane), 1 to 64.", 1, MapPlace.MostStation, 1);
        var projector = CalibrateWindowCommands.Projector();
        var command = new Command("undo", "Go back to the map before the newest one.") { station, projector };
        command.SetAction(parsed =>
        {
            var place = CalibrateWindowCommands.Place(parsed.GetValue(station), parsed.GetValue(projector));
            var stored = CalibrationFiles.Store(parsed).Undo(place);
            if (stored.File is not { } file)
            {
                throw new UserException(stored.Problem);
            }

            console.Out.WriteLine($"this map holds again: {file}");
            return ExitCodes.Ok;
        });
        return command;
    }
}
