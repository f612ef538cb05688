using System.Globalization;
using System.Security.Cryptography;
using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>What somebody who starts a session asks for; what is null is taken from the record, or left unknown.</summary>
public sealed record SessionWish
{
    /// <summary>The bowler's name.</summary>
    public required string Bowler { get; init; }

    /// <summary>The drill.</summary>
    public required DrillSource Drill { get; init; }

    /// <summary>The lane.</summary>
    public required LaneProfile Lane { get; init; }

    /// <summary>The hand.</summary>
    public Hand? Hand { get; init; }

    /// <summary>The ball, as the bowler calls it.</summary>
    public string? Ball { get; init; }

    /// <summary>The balls of a comparison, one for each role of the drill.</summary>
    public ValueList<ChosenBall> Balls { get; init; } = [];

    /// <summary>The bowler's breakpoint.</summary>
    public Breakpoint? Breakpoint { get; init; }

    /// <summary>Length of the oil pattern.</summary>
    public Feet? PatternLength { get; init; }

    /// <summary>Anything about the lane.</summary>
    public string? LaneNote { get; init; }

    /// <summary>Seed for what the drill leaves to chance; a new one when null.</summary>
    public ulong? Seed { get; init; }

    /// <summary>Whether the simulated bowler throws.</summary>
    public bool Simulated { get; init; }

    /// <summary>Sets the session up, with a new id.</summary>
    /// <param name="station">The station, from 1.</param>
    /// <param name="known">What the record knows of the bowler; null when nothing.</param>
    /// <param name="now">The time.</param>
    public SessionSetup ToSetup(int station, BowlerRecord? known, DateTimeOffset now) => new()
    {
        SessionId = string.Create(CultureInfo.InvariantCulture, $"{now:yyyyMMdd-HHmmss}-{RandomNumberGenerator.GetHexString(6, lowercase: true)}"),
        Station = station,
        At = now,
        Bowler = known?.Name ?? Bowler,
        Hand = Hand ?? known?.Hand ?? Domain.Hand.Right,
        Ball = Ball,
        Balls = Balls.Count == 0 && Simulated ? Invented(Drill.Script) : Balls.AsEnumerable().Select(ball => ball with { Name = ball.Name.Trim() }).ToValueList(),
        DrillId = Drill.Script.Id,
        DrillHash = Drill.Hash,
        Lane = Lane,
        Seed = Seed ?? BitConverter.ToUInt32(RandomNumberGenerator.GetBytes(4)),
        Baseline = known?.Baseline ?? new Baseline(),
        RecordedBreakpoint = Breakpoint ?? known?.Breakpoint,
        PatternLength = PatternLength,
        LaneNote = LaneNote,
        Simulated = Simulated,
    };

    /// <summary>The simulated bowler has balls of invented names.</summary>
    private static ValueList<ChosenBall> Invented(DrillScript drill) => drill.Blocks.Select(block => block.Order).OfType<Order.Compare>()
        .SelectMany(order => order.Balls).Distinct().Select((role, i) => new ChosenBall(role, $"Invented ball {(char)('A' + (i % 26))}{(i < 26 ? "" : "2")}")).ToValueList();
}
