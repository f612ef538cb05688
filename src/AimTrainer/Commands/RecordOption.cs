using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Store.Postgres;

namespace AimTrainer.Commands;

/// <summary>Which database holds the record, when it is not the file in the data folder.</summary>
internal static class RecordOption
{
    /// <summary>The option.</summary>
    public const string Name = "--record";

    /// <summary>The setting, for a host that is started by a service: a password on a command line can be read by others on the machine.</summary>
    public const string Variable = "AIMTRAINER_RECORD";

    public static Option<PostgresPlace?> Create() => new(Name)
    {
        Description = $"A PostgreSQL database that holds the record instead of the data folder's file (docs/store.md); also by {Variable}, where nobody else reads the password.",
        Recursive = true,
        HelpName = "postgres:CONNECTION",
        CustomParser = result =>
        {
            var place = PostgresPlace.Read(result.Tokens[0].Value, out var problem);
            if (place is null)
            {
                result.AddError($"{Name}: {problem}");
            }

            return place;
        },
    };

    /// <summary>The database, or null for the data folder's file.</summary>
    /// <exception cref="UserException">The setting cannot be read.</exception>
    public static PostgresPlace? Of(ParseResult parsed)
    {
        if (parsed.GetValue<PostgresPlace?>(Name) is { } named)
        {
            return named;
        }

        var setting = Environment.GetEnvironmentVariable(Variable);
        return string.IsNullOrWhiteSpace(setting) ? null
            : PostgresPlace.Read(setting, out var problem) ?? throw new UserException($"{Variable}: {problem}");
    }

    /// <summary>Where a database was named.</summary>
    public static string SourceOf(ParseResult parsed) => parsed.GetValue<PostgresPlace?>(Name) is null ? "environment" : "option";

    /// <summary>For commands that work on the data folder's file alone.</summary>
    /// <exception cref="UserException">A database is named.</exception>
    public static void RefuseDatabase(ParseResult parsed, string command)
    {
        if (Of(parsed) is { } place)
        {
            throw new UserException($"{command} works on the record in a data folder, not on {place}: use the server's own pg_dump and pg_restore");
        }
    }
}
