namespace AimTrainer.Motion;

/// <summary>Where balls go: sliding with friction, hooking, rolling; to the pins or into a gutter.</summary>
/// <remarks>
/// A symmetric rigid ball on one point of contact with Coulomb friction. A release gives the same digits alone and among a million.
/// Model, sources and limits: <c>docs/motion.md</c>.
/// </remarks>
public static class Paths
{
    /// <summary>Fewest paths for which another core is worth its start.</summary>
    private const int FewestForACore = 256;

    /// <summary>Works out many paths, on this thread, without allocating.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="releases">How each ball leaves the hand; either hand, in any order.</param>
    /// <param name="ends">Takes what each comes to; as many as releases.</param>
    /// <exception cref="ArgumentException">Ball or a release is outside its range (see <see cref="Release.Problem"/>), or the spans differ in length.</exception>
    public static void Run(LaneSurface lane, Ball ball, ReadOnlySpan<Release> releases, Span<PathEnd> ends)
    {
        if (ends.Length != releases.Length)
        {
            throw new ArgumentException($"room for {ends.Length} paths; needed: {releases.Length}", nameof(ends));
        }

        Check(ball);
        for (var i = 0; i < releases.Length; i++)
        {
            Check(releases[i], i);
        }

        for (var from = 0; from < releases.Length;)
        {
            var hand = releases[from].Hand;
            var to = from + 1;
            while (to < releases.Length && to < from + PathKernel.Width && releases[to].Hand == hand)
            {
                to++;
            }

            PathKernel.Run(lane.GridFor(hand), ball, releases[from..to], ends[from..to]);
            from = to;
        }
    }

    /// <summary>Works out very many paths, on as many cores as are allowed. The digits are the same on any number of cores.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="releases">How each ball leaves the hand.</param>
    /// <param name="ends">Takes what each comes to; as many as releases.</param>
    /// <param name="cores">At most so many threads, 1 or more; the machine's own number when null.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">As for <see cref="Run"/>; nothing is worked out then.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped; some paths are worked out.</exception>
    public static void RunOnCores(
        LaneSurface lane, Ball ball, ReadOnlyMemory<Release> releases, Memory<PathEnd> ends, int? cores = null, CancellationToken cancellationToken = default)
    {
        if (ends.Length != releases.Length)
        {
            throw new ArgumentException($"room for {ends.Length} paths; needed: {releases.Length}", nameof(ends));
        }

        Check(ball);
        for (var i = 0; i < releases.Length; i++)
        {
            Check(releases.Span[i], i);
        }

        Parallel.For(
            0,
            (releases.Length + FewestForACore - 1) / FewestForACore,
            new ParallelOptions { MaxDegreeOfParallelism = cores ?? Environment.ProcessorCount, CancellationToken = cancellationToken },
            piece =>
            {
                var from = piece * FewestForACore;
                var to = Math.Min(from + FewestForACore, releases.Length);
                Run(lane, ball, releases.Span[from..to], ends.Span[from..to]);
            });
    }

    /// <summary>Works out one path with everything on its way.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="release">How the ball leaves the hand.</param>
    /// <exception cref="ArgumentException">Ball or release is outside its range (see <see cref="Release.Problem"/>).</exception>
    public static BallPath Trace(LaneSurface lane, Ball ball, in Release release) => Trace(lane, ball, [release])[0];

    /// <summary>Works out some paths with everything on their way, with the digits that each has alone; four cost about as much as one.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="releases">How each ball leaves the hand.</param>
    /// <exception cref="ArgumentException">Ball or a release is outside its range (see <see cref="Release.Problem"/>).</exception>
    public static IReadOnlyList<BallPath> Trace(LaneSurface lane, Ball ball, ReadOnlySpan<Release> releases)
    {
        Check(ball);
        for (var i = 0; i < releases.Length; i++)
        {
            Check(releases[i], i);
        }

        var paths = new BallPath[releases.Length];
        Span<PathEnd> ends = new PathEnd[PathKernel.Width];
        for (var from = 0; from < releases.Length;)
        {
            var hand = releases[from].Hand;
            var to = from + 1;
            while (to < releases.Length && to < from + PathKernel.Width && releases[to].Hand == hand)
            {
                to++;
            }

            var grid = lane.GridFor(hand);
            var pieces = new List<PathPiece>[to - from];
            for (var i = 0; i < pieces.Length; i++)
            {
                pieces[i] = [];
            }

            PathKernel.Run(grid, ball, releases[from..to], ends, pieces);
            for (var i = 0; i < pieces.Length; i++)
            {
                paths[from + i] = new BallPath(releases[from + i], ball, grid.BoardMetres, pieces[i], ends[i]);
            }

            from = to;
        }

        return paths;
    }

    private static void Check(Ball ball)
    {
        if (ball.Problem() is { } problem)
        {
            throw new ArgumentException(problem, nameof(ball));
        }
    }

    private static void Check(in Release release, int index)
    {
        if (release.Problem() is { } problem)
        {
            throw new ArgumentException($"release {index + 1}: {problem}", nameof(release));
        }
    }
}
