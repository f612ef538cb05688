using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Web;

namespace AimTrainer.Commands;

/// <summary>Where to aim, and what to practise.</summary>
internal static class AimCommand
{
    public static Command Create(UserConsole console)
    {
        var bowler = new Option<string>("--bowler")
        {
            Description = "A bowler file with usual throw and scatter (docs/motion.md), or the name of a bowler of the record.",
            Required = true,
            HelpName = "FILE|NAME",
        };
        var lane = new Option<string>("--lane") { Description = "The lane: oil and frictions (docs/motion.md).", Required = true, HelpName = "FILE" };
        var fit = new Option<string?>("--fit") { Description = "What fit-lane --json said of this lane; without it the lane file is taken as exact.", HelpName = "FILE" };
        var ball = new Option<string?>("--ball") { Description = "The ball (docs/motion.md); without it a 15 lb ball of 8.55 in, radius of gyration 2.50 in.", HelpName = "FILE" };
        var boards = Window("--pocket-boards", "Boards of the pocket window; 17,18 when not given.", 0.5, 39.5);
        var angles = Window("--pocket-angle", "Angles of the pocket window in degrees, positive inward; 4,6 when not given.", -20, 20);
        var place = new Option<WindowPlace>("--pocket-at")
        {
            Description = "Where the window is taken: at the touch of the head pin (the usual), or at 60 ft.",
            HelpName = "contact|60",
            CustomParser = ParsePlace,
        };
        var downlane = CommonOptions.Number("--downlane", "Where the downlane target lies, feet; 40 when not given.", 20, 59, "FEET");
        var rotation = CommonOptions.Number("--axis-rotation", "Axis rotation in degrees, for a bowler of the record whose shots have none.", -90, 90, "DEGREES");
        var tilt = CommonOptions.Number("--axis-tilt", "Axis tilt in degrees, likewise.", 0, 90, "DEGREES");
        var laydowns = Steps("--laydowns", "Laydowns that are tried, boards: first, last, step; 8,34,1 when not given.");
        var launches = Steps("--angles", "Launch angles that are tried, degrees outward: first, last, step; -1,6,0.25 when not given.");
        var drill = new Option<string?>("--write-drill") { Description = "Write the drill that trains what is worth most, with this line as its target.", HelpName = "FILE" };
        var (seed, json) = (CommonOptions.Seed(), CommonOptions.Json());
        var command = new Command("aim", "Where to aim: the chance to reach the pocket for every line, the best one, and what to practise (docs/motion.md).")
        {
            bowler, lane, fit, ball, boards, angles, place, downlane, laydowns, launches, rotation, tilt, drill, seed, json,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var surface = MotionFiles.Lane(parsed.GetValue(lane)!).Surface;
            var belief = parsed.GetValue(fit) is { } fitFile ? AimFiles.Fit(fitFile, surface) : LaneBelief.Exactly(surface);
            var thrown = parsed.GetValue(ball) is { } ballFile ? MotionFiles.Ball(ballFile) : Ball.Usual;
            var who = await BowlerAsync(parsed, parsed.GetValue(bowler)!, parsed.GetValue(rotation), parsed.GetValue(tilt), cancellationToken).ConfigureAwait(false);
            var published = PocketWindow.Published;
            var (lowBoard, highBoard) = parsed.GetValue(boards) ?? (published.LowBoard, published.HighBoard);
            var (lowAngle, highAngle) = parsed.GetValue(angles) ?? (published.LowAngleDegrees, published.HighAngleDegrees);
            var settings = new AimSettings
            {
                Window = new PocketWindow(lowBoard, highBoard, lowAngle, highAngle, parsed.GetValue(place)),
                Grid = Grid(parsed.GetValue(laydowns), parsed.GetValue(launches)),
                DownlaneFeet = parsed.GetValue(downlane) ?? new AimSettings().DownlaneFeet,
                Seed = parsed.GetValue(seed) ?? new AimSettings().Seed,
            };
            var advice = Advise(belief, thrown, who.Bowler, settings, cancellationToken);
            var drillFile = parsed.GetValue(drill);
            if (drillFile is not null)
            {
                UserFiles.WriteAllText(drillFile, AimDrill.Of(advice, who.Bowler, surface.ArrowsFeet, settings.DownlaneFeet, drillFile));
            }

            var view = new AimView(advice, who.Bowler, who.Said, settings, surface.ArrowsFeet, belief.Covariance is not null, drillFile);
            if (parsed.GetValue(json))
            {
                Json.Print(console, AimAnswer.Of(advice, who.Bowler, who.Said, settings, surface.ArrowsFeet, view.LaneFitted, drillFile));
            }
            else
            {
                AimText.Print(console, view);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static AimAdvice Advise(LaneBelief belief, Ball ball, AimBowler bowler, AimSettings settings, CancellationToken cancellationToken)
    {
        try
        {
            return AimAdvisor.Advise(belief, ball, bowler, settings, cancellationToken: cancellationToken);
        }
        catch (ArgumentException exception)
        {
            throw new UserException($"aim: {exception.Message}");
        }
    }

    private static async Task<(AimBowler Bowler, string Said)> BowlerAsync(
        ParseResult parsed, string named, double? rotation, double? tilt, CancellationToken cancellationToken)
    {
        if (File.Exists(named))
        {
            return rotation is null && tilt is null
                ? (AimFiles.Bowler(named), $"scatter from {named}")
                : throw new UserException("--axis-rotation, --axis-tilt: are for a bowler of the record; a bowler file has its own");
        }

        if (named.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            throw new UserException($"{named}: no such file");
        }

        using var store = StoreForReading.Open(parsed);
        var read = await BowlerScatter.ReadAsync(store, named, rotation, tilt, cancellationToken).ConfigureAwait(false);
        return read switch
        {
            { Recorded: null } => throw new UserException($"{named}: no such file, and no session of this bowler is stored here; see: aimtrainer sessions list"),
            { Recorded: { Bowler: { } bowler, Shots: var shots } } =>
                (bowler, $"scatter from {shots} shots of {named}{(read.Simulated ? ", all simulated: invented" : "")}; it holds the sensor's noise too"),
            { Recorded.Problem: RecordedBowler.NoRotation } => throw new UserException($"{named}: {RecordedBowler.NoRotation}; give it with --axis-rotation"),
            _ => throw new UserException($"{named}: {read.Recorded.Problem}. Give a bowler file instead (docs/motion.md)"),
        };
    }

    /// <summary>The lines that are tried: what is not said is as usual.</summary>
    private static AimGrid Grid((double First, double Last, double Step)? laydowns, (double First, double Last, double Step)? angles)
    {
        var usual = AimGrid.Usual;
        var (board, boardTo, boardBy) = laydowns ?? (usual.FirstBoard, usual.LastBoard, usual.BoardStep);
        var (angle, angleTo, angleBy) = angles ?? (usual.FirstAngleDegrees, usual.LastAngleDegrees, usual.AngleStepDegrees);
        var grid = new AimGrid(board, boardTo, boardBy, angle, angleTo, angleBy);
        return grid.Problem() is { } problem ? throw new UserException($"--laydowns, --angles: {problem}") : grid;
    }

    private static Option<(double First, double Last, double Step)?> Steps(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "FIRST,LAST,STEP",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            var parts = text.Split(',');
            if (parts.Length == 3 && Number(parts[0]) is { } first && Number(parts[1]) is { } last && Number(parts[2]) is { } step)
            {
                return (first, last, step);
            }

            result.AddError($"{name}: found {FoundText.Short(text)}; allowed: three numbers, first, last and step, as 8,34,1");
            return null;
        },
    };

    private static Option<(double Low, double High)?> Window(string name, string description, double low, double high) => new(name)
    {
        Description = description,
        HelpName = "LOW,HIGH",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            var parts = text.Split(',');
            if (parts.Length == 2 && Number(parts[0]) is { } from && Number(parts[1]) is { } to && from >= low && to <= high && from < to)
            {
                return (from, to);
            }

            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name}: found {FoundText.Short(text)}; allowed: two numbers that rise, {low} to {high}, as 17,18"));
            return null;
        },
    };

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) ? value : null;

    private static WindowPlace ParsePlace(ArgumentResult result)
    {
        switch (result.Tokens[0].Value.ToUpperInvariant())
        {
            case "CONTACT":
                return WindowPlace.Contact;
            case "60":
                return WindowPlace.At60Feet;
            default:
                result.AddError($"--pocket-at: found {FoundText.Short(result.Tokens[0].Value)}; allowed: contact, 60");
                return default;
        }
    }
}
