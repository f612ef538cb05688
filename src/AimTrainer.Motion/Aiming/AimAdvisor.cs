using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Finds where to aim: the line whose throws, scattered as this bowler's do, most often reach the pocket window.</summary>
/// <remarks>
/// Throws are simulated; no chance of a strike is made up. What holds for the chances and what does not: <c>docs/motion.md</c>.
/// </remarks>
public static class AimAdvisor
{
    /// <summary>So many lines of the map are thrown at again with more throws.</summary>
    private const int Contenders = 12;

    /// <summary>How often the step between lines is halved around the best one.</summary>
    private const int Refinements = 2;

    /// <summary>Streams of chance that must not be the same.</summary>
    private const ulong MapStream = 0x6D61, ChooseStream = 0x6368, LaneStream = 0x6C61, LastStream = 0x6C74;

    private const double WorthSaying = 0.01;

    /// <summary>Works out the advice.</summary>
    /// <param name="lane">What is believed of the lane.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="bowler">The bowler.</param>
    /// <param name="settings">How.</param>
    /// <param name="progress">Is told, on the thread of the call, what share of the work is done, 0 to 1; may be null.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">Ball, bowler or settings are outside what is allowed.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static AimAdvice Advise(LaneBelief lane, Ball ball, AimBowler bowler, AimSettings settings, Action<double>? progress = null, CancellationToken cancellationToken = default)
    {
        if ((ball.Problem() ?? settings.Problem() ?? bowler.Meant(new AimLine(Board.LaneCentre.Boards, 0)).Problem()) is { } problem)
        {
            throw new ArgumentException(problem);
        }

        var lanes = lane.Draws(settings.Lanes, settings.Seed ^ LaneStream);
        var (all, ready) = ((double)Amount(settings, lanes.Count), 0);
        var simulation = new AimSimulation(ball, bowler, settings, progress is null ? null : more => progress(Math.Min(1, (ready += more) / all)), cancellationToken);
        var map = simulation.Chances(lanes, settings.Grid.Lines, new ThrowSample(settings.MapThrows, settings.Seed ^ MapStream));
        var line = Choose(simulation, lanes, map, settings);

        var last = new ThrowSample(settings.Throws, settings.Seed ^ LastStream);
        var now = simulation.Hits(lanes, bowler.Scatter, line, last);
        var byLane = now.Select(Share).Order().ToList();
        var chance = byLane.Average();
        var worths = Enum.GetValues<ScatterPart>().Select(part => Worth(part, now, simulation.Hits(lanes, bowler.Scatter.Times(part, 0.5), line, last))).ToValueList();
        var most = worths.AsEnumerable().MaxBy(worth => worth.Points)!;
        var single = simulation.Chances(lanes, [line], last)[0];
        var meant = simulation.Meant(lane.Best, line);
        var path = Paths.Trace(lane.Best, ball, bowler.Meant(line));
        return new AimAdvice(
            single with { Chance = chance, Throws = settings.Throws * lanes.Count },
            Error(PerThrow(now)),
            byLane[(int)(0.05 * (byLane.Count - 1))],
            byLane[(int)Math.Ceiling(0.95 * (byLane.Count - 1))],
            meant.ArrowsBoard,
            path.End.EndFeet >= settings.DownlaneFeet ? path.At(settings.DownlaneFeet).Board : double.NaN,
            meant,
            Room(simulation, lane.Best, bowler, settings.Window, line),
            worths,
            most.Points > 2 * most.ErrorPoints ? most.Part : null,
            map.ToValueList(),
            lanes.Count,
            chance >= WorthSaying);
    }

    /// <summary>About how many paths the whole work takes: those that no throw can have are fewer.</summary>
    private static long Amount(AimSettings settings, int lanes) =>
        ((long)settings.Grid.Lines.Count * settings.MapThrows) + ((long)(Contenders + (9 * Refinements)) * Math.Max(settings.Throws, settings.MapThrows))
        + ((long)settings.Throws * ((lanes * (1 + Scatter.Parts)) + 1));

    /// <summary>The best lines of the map again with throws of their own, then ever nearer around the best of them.</summary>
    private static AimLine Choose(AimSimulation simulation, IReadOnlyList<LaneSurface> lanes, AimChance[] map, AimSettings settings)
    {
        var sample = new ThrowSample(Math.Max(settings.Throws, settings.MapThrows), settings.Seed ^ ChooseStream);
        var best = Best(simulation.Chances(lanes, [.. Ranked(map).Take(Contenders).Select(one => one.Line)], sample));
        var (board, angle) = (settings.Grid.BoardStep, settings.Grid.AngleStepDegrees);
        for (var i = 0; i < Refinements; i++)
        {
            (board, angle) = (board / 2, angle / 2);
            int[] steps = [-1, 0, 1];
            List<AimLine> around = [.. steps.SelectMany(across => steps.Select(turn =>
                new AimLine(best.Line.LaydownBoard + (across * board), best.Line.LaunchAngleDegrees + (turn * angle))))
                .Where(one => one.LaydownBoard >= settings.Grid.FirstBoard && one.LaydownBoard <= settings.Grid.LastBoard
                    && one.LaunchAngleDegrees >= settings.Grid.FirstAngleDegrees && one.LaunchAngleDegrees <= settings.Grid.LastAngleDegrees)];
            best = Best([best, .. simulation.Chances(lanes, around, sample)]);
        }

        return best.Line;
    }

    /// <summary>The most likely; of several that no throw reaches, the one that comes nearest by board or by angle alone.</summary>
    private static IEnumerable<AimChance> Ranked(IEnumerable<AimChance> chances) =>
        chances.OrderByDescending(one => one.Chance).ThenByDescending(one => one.BoardChance).ThenByDescending(one => one.AngleChance);

    private static AimChance Best(IEnumerable<AimChance> chances) => Ranked(chances).First();

    private static SpreadWorth Worth(ScatterPart part, bool[][] now, bool[][] then)
    {
        var gains = PerThrow(then).Zip(PerThrow(now), (after, before) => after - before).ToArray();
        return new SpreadWorth(part, then.Average(Share), gains.Average() * 100, Error(gains) * 100);
    }

    private static double Share(bool[] hits) => hits.Count(hit => hit) / (double)hits.Length;

    /// <summary>On how many of the lanes each throw reaches the window: throws are independent, lanes are shared by all.</summary>
    private static double[] PerThrow(bool[][] hits) => [.. Enumerable.Range(0, hits[0].Length).Select(which => hits.Count(lane => lane[which]) / (double)hits.Length)];

    private static double Error(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / Math.Max(1, values.Length - 1) / values.Length);
    }

    private static RoomForError? Room(AimSimulation simulation, LaneSurface lane, AimBowler bowler, PocketWindow window, AimLine line)
    {
        if (!window.Has(simulation.Meant(lane, line)))
        {
            return null;
        }

        // Boards at the arrows of one degree; the straight line is enough so near to the laydown.
        var boardsPerDegree = Math.PI / 180 * (lane.ArrowsFeet - bowler.LaydownFeet) * 12 / (lane.WidthInches / LaneProfile.BoardCount);
        double Off(double sign, bool turn)
        {
            double Reach(double boards) => sign * boards;
            bool Has(double boards)
            {
                var off = turn
                    ? line with { LaunchAngleDegrees = line.LaunchAngleDegrees - (Reach(boards) / boardsPerDegree) }
                    : line with { LaydownBoard = line.LaydownBoard + Reach(boards) };
                return bowler.Meant(off).Problem() is null && window.Has(simulation.Meant(lane, off));
            }

            const double Step = 0.05, Farthest = 15;
            var boards = 0.0;
            while (boards < Farthest && Has(boards + Step))
            {
                boards += Step;
            }

            return sign * boards;
        }

        return new RoomForError(Off(-1, false), Off(1, false), Off(-1, true), Off(1, true));
    }
}
