using System.CommandLine;
using System.Globalization;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Store.Postgres;
using Spectre.Console;

namespace AimTrainer.Commands;

/// <summary>What a chain of centers does with what they send.</summary>
internal static class ChainCommands
{
    /// <summary>The setting that names the database.</summary>
    public const string Variable = "AIMTRAINER_CHAIN";

    private const string PlaceName = "--database";

    public static Command Create(UserConsole console)
    {
        var place = new Option<PostgresPlace?>(PlaceName)
        {
            Description = $"The chain's PostgreSQL database (docs/chain.md); or the setting {Variable}, where nobody else reads the password.",
            Recursive = true,
            HelpName = "postgres:CONNECTION",
            CustomParser = result =>
            {
                var read = PostgresPlace.Read(result.Tokens[0].Value, out var problem);
                if (read is null)
                {
                    result.AddError($"{PlaceName}: {problem}");
                }

                return read;
            },
        };
        var centers = new Command("centers", "The centers that may send.") { Add(console), Revoke(console), List(console) };
        var report = new Command("report", "What the events of all centers add up to.") { ChainReportCommands.Bowler(console), ChainReportCommands.Outcomes(console), ChainReportCommands.Program(console), ChainReportCommands.Cohorts(console) };
        return new Command("chain", "Many centers in one database: take what they send, and report on it.") { place, Serve(console), centers, Link(console), Erase(console), report };
    }

    /// <summary>Opens the database that a command line or the setting names.</summary>
    /// <exception cref="UserException">None is named.</exception>
    public static PostgresChain Open(ParseResult parsed)
    {
        var place = parsed.GetValue<PostgresPlace?>(PlaceName);
        if (place is null)
        {
            var setting = Environment.GetEnvironmentVariable(Variable);
            place = string.IsNullOrWhiteSpace(setting)
                ? throw new UserException($"which database? Name it by {PlaceName} postgres:Host=SERVER;Database=NAME, or set {Variable}")
                : PostgresPlace.Read(setting, out var problem) ?? throw new UserException($"{Variable}: {problem}");
        }

        return PostgresChain.Open(place, TimeProvider.System);
    }

    private static Command Serve(UserConsole console)
    {
        var urls = new Option<string>("--urls")
        {
            Description = "Where to listen. Beyond this machine put a server that speaks TLS in front (docs/chain.md): centers send nothing over plain http.",
            HelpName = "URL[;URL]",
            DefaultValueFactory = _ => ChainHost.UsualUrl,
        };
        var command = new Command("serve", "Take what centers send, until Ctrl+C.") { urls };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = Open(parsed);
            await using var host = await ChainHost.OpenAsync(chain, parsed.GetValue(urls)!, cancellationToken).ConfigureAwait(false);
            console.Out.WriteLine($"Centers send to {string.Join(" and ", host.Addresses)} (Ctrl+C ends it; what was confirmed is kept in {chain.Place})");
            await host.UntilStoppedAsync(cancellationToken).ConfigureAwait(false);
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Add(UserConsole console)
    {
        var name = Argument("center", "What people call the center.");
        var command = new Command("add", "Add a center; prints its token, once.") { name };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = Open(parsed);
            var token = await chain.AddCenterAsync(parsed.GetValue(name)!, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{parsed.GetValue(name)}: there is a center of this name already; see: aimtrainer chain centers list");
            console.Out.WriteLine(token);
            console.Error.WriteLine("This token is never shown again. At the center: aimtrainer serve --chain https://... --token-file FILE");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Revoke(UserConsole console)
    {
        var name = Argument("center", "The center.");
        var command = new Command("revoke", "Take a center's token back; what it sent stays.") { name };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = Open(parsed);
            if (!await chain.RevokeCenterAsync(parsed.GetValue(name)!, cancellationToken).ConfigureAwait(false))
            {
                throw new UserException($"{parsed.GetValue(name)}: no such center; see: aimtrainer chain centers list");
            }

            console.Out.WriteLine($"{parsed.GetValue(name)} may send no more");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command List(UserConsole console)
    {
        var json = CommonOptions.Json();
        var command = new Command("list", "The centers, and when each was last heard of.") { json };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = Open(parsed);
            var centers = await chain.ListCentersAsync(cancellationToken).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                Json.Print(console, centers);
                return ExitCodes.Ok;
            }

            var table = Consoles.Table(
                ("center", ColumnKind.Words), ("last heard of (UTC)", ColumnKind.Name), ("sessions", ColumnKind.Number), ("shots", ColumnKind.Number),
                ("erasures waiting", ColumnKind.Number), ("state", ColumnKind.Words));
            foreach (var center in centers)
            {
                table.AddRow(
                    center.Name, center.HeardAt?.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "never", $"{center.Sessions}", $"{center.Shots}",
                    $"{center.ErasuresWaiting}", center.RevokedAt is null ? "may send" : "revoked");
            }

            Consoles.Write(Consoles.For(console), table);
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Link(UserConsole console)
    {
        var person = Argument("person", "What the chain calls the person; a new name makes a new person.");
        var center = Argument("center", "The center.");
        var bowler = Argument("bowler", "The bowler's name there.");
        var command = new Command("link", "Say that a bowler of a center is a person of the chain. Equal names are never linked by themselves: they may be two people.") { person, center, bowler };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            using var chain = Open(parsed);
            if (!await chain.LinkAsync(parsed.GetValue(person)!, parsed.GetValue(center)!, parsed.GetValue(bowler)!, cancellationToken).ConfigureAwait(false))
            {
                throw new UserException($"{parsed.GetValue(bowler)} at {parsed.GetValue(center)}: no such bowler there");
            }

            console.Out.WriteLine($"{parsed.GetValue(bowler)} at {parsed.GetValue(center)} is {parsed.GetValue(person)}");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Command Erase(UserConsole console)
    {
        var name = Argument("name", "The person of the chain; with --center the bowler's name there.");
        var center = CommonOptions.Name("--center", "Only at this center.");
        var sure = new Option<bool>("--yes") { Description = "Really: nothing of it can be brought back." };
        var command = new Command("erase", "Erase somebody: here at once, at the centers when they are next heard of.") { name, center, sure };
        command.SetAction(async (parsed, cancellationToken) =>
        {
            if (!parsed.GetValue(sure))
            {
                throw new UserException($"everything of {parsed.GetValue(name)} would go for good, here and at the centers; add --yes to do it");
            }

            using var chain = Open(parsed);
            var erased = await chain.EraseBowlerAsync(parsed.GetValue(center), parsed.GetValue(name)!, cancellationToken).ConfigureAwait(false)
                ?? throw new UserException($"{parsed.GetValue(name)}: nobody is called so; a bowler who was linked to no person is named with --center");
            console.Out.WriteLine($"{Words.Count(erased, "session")} erased here; the centers do so when they are next heard of (chain centers list tells which have not yet)");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static Argument<string> Argument(string name, string description) => new(name) { Description = description, HelpName = name.ToUpperInvariant() };
}
