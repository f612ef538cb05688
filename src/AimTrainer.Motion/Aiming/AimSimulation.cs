namespace AimTrainer.Motion;

/// <summary>Throws a sample at lines and counts.</summary>
/// <param name="ball">The ball.</param>
/// <param name="bowler">The bowler.</param>
/// <param name="settings">The window, and how many cores.</param>
/// <param name="done">Is told of paths as they are worked out: how many more; may be null.</param>
/// <param name="cancellationToken">Stops the work.</param>
internal sealed class AimSimulation(Ball ball, AimBowler bowler, AimSettings settings, Action<int>? done, CancellationToken cancellationToken)
{
    /// <summary>After so many paths progress is told.</summary>
    private const int Piece = 4096;

    private readonly PocketWindow _window = settings.Window;

    /// <summary>The chance of every line, the lanes taking turns with the throws.</summary>
    public AimChance[] Chances(IReadOnlyList<LaneSurface> lanes, IReadOnlyList<AimLine> lines, ThrowSample sample)
    {
        var counts = new (int Both, int Board, int Angle)[lines.Count];
        for (var lane = 0; lane < lanes.Count; lane++)
        {
            var (releases, of) = (new List<Release>(), new List<int>());
            for (var line = 0; line < lines.Count; line++)
            {
                for (var which = lane; which < sample.Count; which += lanes.Count)
                {
                    if (sample.At(which, bowler, bowler.Scatter, lines[line]) is { } thrown)
                    {
                        releases.Add(thrown);
                        of.Add(line);
                    }
                }
            }

            var ends = Ends(lanes[lane], releases);
            for (var i = 0; i < ends.Length; i++)
            {
                ref var count = ref counts[of[i]];
                var (board, angle) = (_window.HasBoard(ends[i]), _window.HasAngle(ends[i]));
                count = (count.Both + (board && angle ? 1 : 0), count.Board + (board ? 1 : 0), count.Angle + (angle ? 1 : 0));
            }
        }

        double all = sample.Count;
        return [.. counts.Select((count, i) => new AimChance(lines[i], count.Both / all, count.Board / all, count.Angle / all, sample.Count))];
    }

    /// <summary>Which throws reach the window, every throw on every lane: lane by lane. What cannot be worked out is a miss.</summary>
    public bool[][] Hits(IReadOnlyList<LaneSurface> lanes, Scatter scatter, AimLine line, ThrowSample sample)
    {
        var (releases, of) = (new List<Release>(), new List<int>());
        for (var which = 0; which < sample.Count; which++)
        {
            if (sample.At(which, bowler, scatter, line) is { } thrown)
            {
                releases.Add(thrown);
                of.Add(which);
            }
        }

        return [.. lanes.Select(lane =>
        {
            var hits = new bool[sample.Count];
            var ends = Ends(lane, releases);
            for (var i = 0; i < ends.Length; i++)
            {
                hits[of[i]] = _window.Has(ends[i]);
            }

            return hits;
        })];
    }

    /// <summary>The path of the throw that is meant.</summary>
    public PathEnd Meant(LaneSurface lane, AimLine line)
    {
        Span<PathEnd> end = stackalloc PathEnd[1];
        Paths.Run(lane, ball, [bowler.Meant(line)], end);
        return end[0];
    }

    private PathEnd[] Ends(LaneSurface lane, List<Release> releases)
    {
        var ends = new PathEnd[releases.Count];
        var thrown = releases.ToArray().AsMemory();
        for (var from = 0; from < ends.Length; from += Piece)
        {
            var count = Math.Min(Piece, ends.Length - from);
            Paths.RunOnCores(lane, ball, thrown.Slice(from, count), ends.AsMemory(from, count), settings.Cores, cancellationToken);
            done?.Invoke(count);
        }

        return ends;
    }
}
