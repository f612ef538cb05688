using System.CommandLine;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Setup;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Commands;

/// <summary>Lists balls, keeps what is known of them, and the history of their surfaces.</summary>
internal static class BallCommands
{
    public static Command Create(UserConsole console) =>
        new("ball", "Balls: what is known of them, and the history of their surfaces.") { List(console), Set(console), Surface(console) };

    private static Command List(UserConsole console)
    {
        var bowler = CommonOptions.Name("--bowler", "Only this bowler's.");
        var json = CommonOptions.Json();
        var command = new Command("list", "Balls by bowler and name.") { bowler, json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var store = StoreForReading.Open(parsed);
            var balls = await store.ListBallsAsync(parsed.GetValue(bowler), cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, balls);
            }
            else if (balls.Count == 0)
            {
                console.Out.WriteLine(parsed.GetValue(bowler) is { } name
                    ? $"no ball of {name} is known here" : "no ball is known here yet: name one with a session, or with ball set");
            }
            else
            {
                BallText.Print(console, balls);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Set(UserConsole console)
    {
        var (bowler, name) = (Needed("--bowler", "Whose ball."), Needed("--name", "The ball's name; capitals and blanks make no other ball."));
        var surface = CommonOptions.Name("--surface", "Grit or finish as it is now.");
        var weight = CommonOptions.Number("--weight", "Weight in pounds.", BallDetails.LightestPounds, BallDetails.HeaviestPounds, "LB");
        var gyration = CommonOptions.Number("--gyration", "Radius of gyration in inches.", BallDetails.LeastGyrationInches, BallDetails.MostGyrationInches, "IN");
        var differential = CommonOptions.Number("--differential", "Difference of the radii of gyration in inches.", 0, BallDetails.MostDifferentialInches, "IN");
        var layout = CommonOptions.Name("--layout", "How it is drilled.");
        var games = CommonOptions.Number("--games", "Games since the last work on its surface.", 0, BallDetails.MostGames, "N");
        var command = new Command("set", "Keep what is known of a ball: a new one, or one that is known. What is not given stays as it was.")
        {
            bowler, name, surface, weight, gyration, differential, layout, games,
        };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            using var store = StoreForWriting.Open(parsed, folder);
            var (whose, called) = (parsed.GetValue(bowler)!, parsed.GetValue(name)!);
            var known = await store.FindBallAsync(whose, called, cancellationToken).ConfigureAwait(false);
            var before = known?.Details ?? new BallDetails { Bowler = whose, Name = called };
            if (parsed.GetValue(games) is { } given && Math.Floor(given) != given)
            {
                throw new UserException(string.Create(CultureInfo.InvariantCulture, $"--games: found {given}; allowed: a whole number, 0 to {BallDetails.MostGames}"));
            }

            var ball = before with
            {
                Surface = parsed.GetValue(surface) ?? before.Surface,
                WeightPounds = parsed.GetValue(weight) ?? before.WeightPounds,
                RadiusOfGyration = parsed.GetValue(gyration) is { } radius ? Inches.FromMeasurement(radius) : before.RadiusOfGyration,
                Differential = parsed.GetValue(differential) is { } difference ? Inches.FromMeasurement(difference) : before.Differential,
                Layout = parsed.GetValue(layout) ?? before.Layout,
                GamesSinceSurfaceWork = (int?)parsed.GetValue(games) ?? before.GamesSinceSurfaceWork,
            };
            await store.KeepBallAsync(ball, cancellationToken).ConfigureAwait(false);
            console.Out.WriteLine($"{(known is null ? "new ball" : "kept")}: {BallText.Words(ball)}");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Surface(UserConsole console)
    {
        var (bowler, name) = (Needed("--bowler", "Whose ball."), Needed("--name", "The ball's name."));
        var work = CommonOptions.Name("--work", "Work on the surface: the grit or finish that it has after it.");
        var scan = CommonOptions.Number("--scan", "A scan of the roughness: the number that the meter shows.", 0, 10_000, "NUMBER");
        var unit = CommonOptions.Name("--unit", "The unit that the meter shows.");
        var note = CommonOptions.Name("--note", "Anything else.");
        var command = new Command("surface", "Add work or a scan to the history of a ball's surface. Work begins the count of games anew.")
        {
            bowler, name, work, scan, unit, note,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(work) is null == result.GetValue(scan) is null)
            {
                result.AddError("--work, --scan: give exactly one of them");
            }
            else if (result.GetValue(scan) is null != result.GetValue(unit) is null)
            {
                result.AddError("--scan and --unit: a number of roughness means nothing without its unit; give both");
            }
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var folder = DataFolder.Open(DataPlace.Named(parsed));
            using var store = StoreForWriting.Open(parsed, folder);
            var entry = new BallSurface(
                TimeProvider.System.GetUtcNow(), parsed.GetValue(work) is null ? BallSurfaceKind.Scan : BallSurfaceKind.Work, parsed.GetValue(work),
                parsed.GetValue(scan), parsed.GetValue(unit), null, parsed.GetValue(note));
            var (whose, called) = (parsed.GetValue(bowler)!, parsed.GetValue(name)!);
            if (!await store.AddSurfaceAsync(whose, called, entry, cancellationToken).ConfigureAwait(false))
            {
                throw new UserException($"{whose} has no ball \"{called}\" in this record: make it first (ball set), or see ball list");
            }

            console.Out.WriteLine($"kept: {called}, {BallText.Words(entry)}");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Option<string?> Needed(string name, string description)
    {
        var option = CommonOptions.Name(name, description);
        option.Required = true;
        return option;
    }
}
