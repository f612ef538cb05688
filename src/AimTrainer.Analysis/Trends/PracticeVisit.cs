namespace AimTrainer.Analysis;

/// <summary>
/// One time at the lanes: sessions that begin within twelve hours of the first. They make one point of a trend, because sessions so
/// near in time resemble one another and would pass for more knowledge than they are.
/// </summary>
/// <param name="Number">Counts the bowler's visits in the period, from 1.</param>
/// <param name="At">When the first session was set up.</param>
/// <param name="Sessions">How many sessions.</param>
/// <param name="Throws">Shots that count, by the targets thrown at: a line of two targets counts once for each.</param>
public sealed record PracticeVisit(int Number, DateTimeOffset At, int Sessions, int Throws)
{
    /// <summary>Sessions that begin within this time of a visit's first belong to it.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromHours(12);
}
