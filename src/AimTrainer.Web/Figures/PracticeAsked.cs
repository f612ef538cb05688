using System.ComponentModel;
using Microsoft.AspNetCore.Mvc;

namespace AimTrainer.Web;

/// <summary>What an address asks for, as it is written.</summary>
internal sealed class PracticeAsked
{
    /// <summary>First day (UTC).</summary>
    [FromQuery(Name = "from"), Description("First day (UTC), such as 2026-09-01")]
    public string? From { get; init; }

    /// <summary>Last day (UTC).</summary>
    [FromQuery(Name = "to"), Description("Last day (UTC)")]
    public string? To { get; init; }

    /// <summary>Apart by what.</summary>
    [FromQuery(Name = "by"), Description("Figures apart by this only: drill, block, ball, line, lane-part, speed, ten or session")]
    public string? By { get; init; }

    /// <summary>First day of a program.</summary>
    [FromQuery(Name = "starts"), Description("First day of a program (UTC)")]
    public string? Starts { get; init; }

    /// <summary>Weeks of the program.</summary>
    [FromQuery(Name = "weeks"), Description("Weeks of the program")]
    public string? Weeks { get; init; }

    /// <summary>Planned sessions a week.</summary>
    [FromQuery(Name = "sessionsAWeek"), Description("Planned sessions a week")]
    public string? SessionsAWeek { get; init; }

    /// <summary>Spread to reach.</summary>
    [FromQuery(Name = "goalSpreadBoards"), Description("Spread to reach (standard deviation), boards")]
    public string? GoalSpreadBoards { get; init; }

    /// <summary>Where the goal is measured.</summary>
    [FromQuery(Name = "goalFeet"), Description("Where the goal is measured, feet; the arrows when left out")]
    public string? GoalFeet { get; init; }

    /// <summary>Whether any part of a program is given.</summary>
    internal bool HasProgram => new[] { Starts, Weeks, SessionsAWeek, GoalSpreadBoards, GoalFeet }.Any(part => !string.IsNullOrEmpty(part));
}
