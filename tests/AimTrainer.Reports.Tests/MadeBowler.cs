using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Reports.Tests;

/// <summary>An invented bowler's practice, as the store would give it.</summary>
internal sealed class MadeBowler(string name = "Ann Lee", Hand hand = Hand.Right, bool simulated = false)
{
    public static readonly DateTimeOffset Start = new(2026, 9, 1, 18, 0, 0, TimeSpan.Zero);

    private readonly List<PracticeSession> _sessions = [];
    private readonly List<PracticeBlock> _blocks = [];
    private readonly List<PracticeCrossing> _crossings = [];

    public int OtherHand { get; init; }

    public bool CutOff { get; init; }

    /// <summary>A session of shots at a line; each shot has its laydown and a board (or null) for each target.</summary>
    public MadeBowler Session(
        int day, string drill, BlockKind kind, (double Feet, double Centre, double Width)[] line, IEnumerable<(double? Laydown, double?[] Boards)> shots)
    {
        var (id, at) = ($"s{_sessions.Count + 1}", Start.AddDays(day));
        var number = 0;
        var mine = new List<PracticeCrossing>();
        foreach (var (laydown, boards) in shots)
        {
            number++;
            for (var i = 0; i < line.Length; i++)
            {
                var (feet, centre, width) = line[i];
                var board = boards[i] is { } seen ? Math.Round(seen, 2) : (double?)null;
                var miss = board - centre;
                mine.Add(new PracticeCrossing(
                    id, number, at.AddMinutes(number), 0, kind, null, $"board {centre}", feet, centre, width, board is null ? CrossingKind.Unknown : CrossingKind.Measured,
                    board, miss is { } off ? Math.Round(off, 4) : null, miss is { } size ? Math.Abs(size) <= width / 2 : null,
                    laydown is { } from ? Math.Round(from, 2) : null, null, null, null));
            }
        }

        _sessions.Add(new PracticeSession(id, at, true, drill, char.ToUpperInvariant(drill[0]) + drill[1..].Replace('-', ' '), "lane 1", number, 0));
        foreach (var target in mine.GroupBy(crossing => (crossing.Target, crossing.DistanceFeet)))
        {
            double[] misses = [.. target.Select(crossing => crossing.MissBoards).OfType<double>()];
            double[] seen = [.. target.Select(crossing => crossing.CrossingBoard).OfType<double>()];
            _blocks.Add(new PracticeBlock(
                id, at, 0, "block", kind, null, target.Key.Target, target.Key.DistanceFeet, target.Count(), misses.Length, target.Count(crossing => crossing.Held == true),
                misses.Sum(), misses.Sum(Math.Abs), misses.Sum(miss => miss * miss), seen.Length == 0 ? null : seen.Min(), seen.Length == 0 ? null : seen.Max(),
                seen.Count(board => board == Math.Round(board))));
        }

        _crossings.AddRange(mine);
        return this;
    }

    /// <summary>A session of training at board 10 at the arrows.</summary>
    public MadeBowler AtTheArrows(params double?[] boards) =>
        Session(_sessions.Count * 3, "three-in-four", BlockKind.Training, [(15, 10, 3)], boards.Select(board => ((double?)null, (double?[])[board])));

    /// <summary>Weeks of a test and of a line of two targets: an invented scenario.</summary>
    /// <param name="weeks">How many.</param>
    /// <param name="spread">Spread of a week's test.</param>
    /// <param name="lean">Mean miss at the arrows, boards inside.</param>
    public MadeBowler Weeks(int weeks, Func<int, double> spread, double lean = 0)
    {
        for (var week = 0; week < weeks; week++)
        {
            var (now, size) = (week, spread(week));
            Session(
                week * 7, "session-start-test", BlockKind.Test, [(15, 10, 3)],
                Enumerable.Range(0, 20).Select(shot => ((double?)null, (double?[])[10 + lean + (size * Normal(now, shot))])));
            Session(
                (week * 7) + 2, "two-point-line", BlockKind.Training, [(15, 15, 3), (40, 8, 5)],
                Enumerable.Range(0, 15).Select(shot =>
                {
                    var laydown = 19.2 + (0.4 * Normal(now, 100 + shot));
                    var slope = -0.28 + (0.05 * Normal(now, 200 + shot));
                    return ((double?)laydown, (double?[])[laydown + (15 * slope), laydown + (40 * slope) + (0.5 * Normal(now, 300 + shot))]);
                }));
            if (week % 3 == 0)
            {
                Session(
                    (week * 7) + 4, "ten-shot-spread", BlockKind.Training, [(15, 10, 1)],
                    Enumerable.Range(0, 10).Select(shot => ((double?)null, (double?[])[10 + lean + (size * Normal(now, 400 + shot))])));
            }
        }

        return this;
    }

    public BowlerReport Report(PracticeFilter? filter = null, ReportLanes? lanes = null)
    {
        var (practice, crossings) = Practice();
        return ReportBuilder.Build(practice, crossings, lanes ?? ReportLanes.All(LaneProfileReader.Default), filter ?? new PracticeFilter(name), Start.AddDays(120));
    }

    public (BowlerPractice Practice, IReadOnlyList<PracticeCrossing> Crossings) Practice()
    {
        // The store gives the newest shots first, each with its targets in order.
        var newest = _crossings.GroupBy(crossing => (crossing.SessionId, crossing.Number)).Reverse().Take(LanePicture.MostShots).SelectMany(shot => shot).ToList();
        return (new BowlerPractice(name, hand, simulated, _sessions.ToValueList(), _blocks.ToValueList(), OtherHand, CutOff), newest);
    }

    private static double Normal(int seed, int place) =>
        StandardNormal.Quantile((0.998 * SeededRandom.Unit((ulong)(seed + 1), (ulong)place)) + 0.001);
}
