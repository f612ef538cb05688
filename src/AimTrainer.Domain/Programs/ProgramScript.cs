using System.Text.Json.Serialization;

namespace AimTrainer.Domain;

/// <summary>A program: weeks of sessions with a purpose. Read from JSON; see <c>docs/programs.md</c>. It says what is practised, never how much an arm can take.</summary>
public sealed record ProgramScript
{
    /// <summary>Most weeks.</summary>
    public const int MostWeeks = 52;

    /// <summary>Name for commands and records: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>Name for people.</summary>
    public required string Name { get; init; }

    /// <summary>What it is to bring about.</summary>
    public required string Purpose { get; init; }

    /// <summary>Who it is for.</summary>
    public required string WhoFor { get; init; }

    /// <summary>Who may join, and how many.</summary>
    public required ProgramJoining Joining { get; init; }

    /// <summary>What happens to a missed session.</summary>
    public required ProgramMakeUp MakeUp { get; init; }

    /// <summary>What to take care of, shown before every session.</summary>
    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>Whether every bowler is asked how the arm feels before every session. The answer is noted; nothing is prescribed.</summary>
    public bool AsksHowArmFeels { get; init; }

    /// <summary>Its levels, from the first to the last; goals are given for these.</summary>
    public required ValueList<ProgramLevel> Levels { get; init; }

    /// <summary>Its weeks, in order.</summary>
    public required ValueList<PlannedWeek> Weeks { get; init; }

    /// <summary>All sessions with the number of their week, from 1, in order.</summary>
    [JsonIgnore]
    public IEnumerable<(int Week, PlannedSession Session)> Sessions =>
        Weeks.AsEnumerable().SelectMany((week, index) => week.Sessions.AsEnumerable().Select(session => (index + 1, session)));
}
