using System.Text.Json;
using AimTrainer.Domain;
using Npgsql;

namespace AimTrainer.Store.Postgres;

/// <summary>Keeps what a center tells of its groups.</summary>
internal static class ChainGroups
{
    private const int DaysAWeek = 7;

    /// <summary>The program of a group, as its center had it.</summary>
    /// <exception cref="JsonException">It cannot be read.</exception>
    public static ProgramScript Program(string json) => JsonSerializer.Deserialize<ProgramScript>(json, DomainJson.Options) ?? throw new JsonException("null");

    /// <summary>How many weeks each program has.</summary>
    /// <exception cref="JsonException">One cannot be read.</exception>
    public static Dictionary<string, int> WeeksOf(GroupsRequest request) =>
        request.Programs.AsEnumerable().DistinctBy(program => program.Id).ToDictionary(program => program.Id, program => Program(program.Json).Weeks.Count);

    /// <summary>Takes all groups of a center, in a transaction that holds the center's lock.</summary>
    /// <param name="connection">In the transaction.</param>
    /// <param name="center">The center.</param>
    /// <param name="request">Its groups.</param>
    /// <param name="weeks">How many weeks each program has.</param>
    /// <param name="today">Today: a group that is over stays when the center deletes it, because what came of it is known.</param>
    /// <returns>How many members there is no session of.</returns>
    public static int Take(NpgsqlConnection connection, int center, GroupsRequest request, Dictionary<string, int> weeks, DateOnly today)
    {
        var programs = request.Programs.AsEnumerable().DistinctBy(program => program.Id).ToDictionary(program => program.Id);
        var groups = request.Groups.AsEnumerable().Where(group => programs.ContainsKey(group.ProgramId)).DistinctBy(group => (group.Id, group.Starts)).ToList();
        Run(
            connection,
            """
            DELETE FROM groups WHERE center_id = $1
                AND (ends > $2 OR (id, starts) IN (SELECT * FROM unnest($3, $4)))
            """,
            center, today, groups.ConvertAll(group => group.Id), groups.ConvertAll(group => group.Starts));
        var unknown = 0;
        foreach (var group in groups)
        {
            Run(
                connection, "INSERT INTO groups (center_id, id, starts, ends, program_id, program_json, members) VALUES ($1, $2, $3, $4, $5, $6, $7)",
                center, group.Id, group.Starts, group.Starts.AddDays(weeks[group.ProgramId] * DaysAWeek), group.ProgramId, programs[group.ProgramId].Json, group.Members.Count);
            var members = group.Members.AsEnumerable().DistinctBy(member => NameKey.Of(member.Bowler)).ToList();
            unknown += members.Count - Run(
                connection,
                """
                INSERT INTO enrolments (center_id, group_id, group_starts, bowler_id, level)
                SELECT $1, $2, $3, bowlers.id, told.level FROM unnest($4, $5) AS told (key, level) JOIN bowlers ON bowlers.center_id = $1 AND bowlers.key = told.key
                """,
                center, group.Id, group.Starts, members.ConvertAll(member => NameKey.Of(member.Bowler)), members.ConvertAll(member => member.Level));
        }

        return unknown;
    }

    private static int Run(NpgsqlConnection connection, string sql, params ReadOnlySpan<object> values)
    {
        using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return command.ExecuteNonQuery();
    }
}
