using System.CommandLine;
using AimTrainer.Commands;
using AimTrainer.Store.Postgres;
using AimTrainer.Store.Sqlite;

namespace AimTrainer.Setup;

/// <summary>Where the records and the user's own drills are.</summary>
internal static class DataPlace
{
    /// <summary>The variable of the environment that names the folder where no option does.</summary>
    public const string Variable = "AIMTRAINER_DATA";

    /// <summary>The folder the user named, or null for the usual place.</summary>
    public static string? Named(ParseResult parsed) =>
        (parsed.GetValue<string?>(CommonOptions.DataName) ?? OfEnvironment()) is { } named ? Path.GetFullPath(named) : null;

    /// <summary>Where the folder was named.</summary>
    public static string SourceOf(ParseResult parsed) => parsed.GetValue<string?>(CommonOptions.DataName) is not null ? "option" : OfEnvironment() is not null ? "environment" : "usual";

    /// <summary>The folder in use.</summary>
    public static string Of(ParseResult parsed) => Named(parsed) ?? DataFolder.UsualPlace();

    /// <summary>
    /// What a user must add to a command so that it finds this record: nothing in the usual place, else <c>--data DIR</c>; for a database
    /// <c>--record</c>, whose password is not repeated.
    /// </summary>
    public static string OptionFor(string recordPlace)
    {
        if (recordPlace.StartsWith(PostgresPlace.Prefix, StringComparison.Ordinal))
        {
            return string.IsNullOrWhiteSpace(Environment.GetEnvironmentVariable(RecordOption.Variable)) ? $" {RecordOption.Name} {PostgresPlace.Prefix}CONNECTION" : "";
        }

        var folder = Path.GetDirectoryName(recordPlace)!;
        return folder == Path.GetFullPath(OfEnvironment() ?? DataFolder.UsualPlace()) ? ""
            : folder.Contains(' ', StringComparison.Ordinal) ? $" --data \"{folder}\"" : $" --data {folder}";
    }

    /// <summary>The user's own drills.</summary>
    public static string OwnDrills(ParseResult parsed) => Path.Combine(Of(parsed), "drills");

    private static string? OfEnvironment() => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named ? named : null;
}
