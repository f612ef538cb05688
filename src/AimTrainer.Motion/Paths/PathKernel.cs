using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AimTrainer.Motion;

/// <summary>Works out four paths at once. One path alone is four times the same: so its digits are those it has among many.</summary>
/// <remarks>
/// Distance downlane is the clock: stretches of oil, arrows and pins then fall on ends of steps, and no friction at all is no special
/// case. With r'' = -friction × a fixed direction, a step is Nyström's of fourth order (three frictions), with Kutta's weights
/// for the weak dependence on speed, and Simpson's rule for board and time.
/// Source of the methods: Hairer, Nørsett, Wanner, "Solving ordinary differential equations I", 2nd ed., II.1 and II.14.
/// </remarks>
internal static class PathKernel
{
    public const int Width = 4;

    /// <summary>Runs up to four releases of one hand.</summary>
    /// <param name="grid">The lane for that hand.</param>
    /// <param name="ball">The ball.</param>
    /// <param name="releases">One to four.</param>
    /// <param name="ends">As many.</param>
    /// <param name="pieces">Takes the pieces of each path, when somebody wants them: as many, or none.</param>
    public static void Run(FrictionGrid grid, Ball ball, ReadOnlySpan<Release> releases, Span<PathEnd> ends, ReadOnlySpan<List<PathPiece>> pieces = default)
    {
        var four = default(FourTracks);
        Span<Track> tracks = four;
        for (var lane = 0; lane < Width; lane++)
        {
            tracks[lane] = new Track(new Slide(releases[Math.Min(lane, releases.Length - 1)], ball, grid.BoardMetres), lane < pieces.Length ? pieces[lane] : null);
        }

        var sliding = Width;
        foreach (ref readonly var stretch in grid.Stretches.AsSpan())
        {
            if (double.IsNaN(stretch.Even))
            {
                sliding = Steps(grid, stretch, tracks);
            }
            else
            {
                sliding = 0;
                foreach (ref var track in tracks)
                {
                    track.Even(stretch);
                    sliding += track.IsSliding ? 1 : 0;
                }
            }

            if (stretch.End == grid.ArrowsMetres)
            {
                foreach (ref var track in tracks)
                {
                    track.AtArrows(stretch.End);
                }
            }

            if (sliding == 0)
            {
                break;
            }
        }

        for (var lane = 0; lane < releases.Length; lane++)
        {
            ends[lane] = tracks[lane].Finish(grid, ball);
        }
    }

    /// <summary>Integrates a stretch of uneven friction.</summary>
    /// <returns>How many balls still slide at its end.</returns>
    private static int Steps(FrictionGrid grid, in GridStretch stretch, Span<Track> tracks)
    {
        var laydown = Of(tracks, static (in Track track) => track.Slide.X);
        var slip = Of(tracks, static (in Track track) => track.State.Slip);
        var board = Of(tracks, static (in Track track) => track.State.Board);
        var seconds = Of(tracks, static (in Track track) => track.State.Seconds);
        var shareX = Of(tracks, static (in Track track) => track.Slide.ShareX);
        var shareY = Of(tracks, static (in Track track) => track.Slide.ShareY);
        var finalX = Of(tracks, static (in Track track) => track.Slide.FinalX);
        var finalY = Of(tracks, static (in Track track) => track.Slide.FinalY);
        var slowing = Of(tracks, static (in Track track) => -track.Slide.Slowing);
        var straight = Of(tracks, static (in Track track) => track.Slide.Straight);
        var sliding = Of(tracks, static (in Track track) => track.IsSliding ? 1.0 : 0.0);
        var isSliding = Vector256.GreaterThan(sliding, Vector256<double>.Zero);
        if (isSliding == Vector256<double>.Zero)
        {
            return 0;
        }

        var (half, quarter, sixth, four) = (Vector256.Create(0.5), Vector256.Create(0.25), Vector256.Create(1 / 6.0), Vector256.Create(4.0));
        var (one, eighth) = (Vector256.Create(1.0), Vector256.Create(0.125));
        var (nearEdge, farEdge) = (Vector256.Create(Track.NearEdge), Vector256.Create(Track.FarEdge));
        var length = (stretch.End - stretch.Start) / stretch.Steps;
        var pace = one / (finalX + (slip * shareX));
        var slope = (finalY + (slip * shareY)) * pace;
        var (friction, cell, first) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.AllBitsSet);
        for (var step = 0; step < stretch.Steps; step++)
        {
            // A ball that is laid down beyond this step does not move in it.
            var end = Vector256.Create(step == stretch.Steps - 1 ? stretch.End : stretch.Start + ((step + 1) * length));
            var began = Vector256.Create(stretch.Start + (step * length));
            var start = Vector256.Min(Vector256.Max(began, laydown), end);
            var h = (end - start) & isSliding;

            // The friction here is known from the end of the last step, but for a ball that comes down in this one.
            var fresh = first | Vector256.GreaterThan(start, began);
            if (fresh != Vector256<double>.Zero)
            {
                var here = grid.Friction(stretch, start, board, out var hereCell, out _);
                (friction, cell) = (Vector256.ConditionalSelect(fresh, here, friction), Vector256.ConditionalSelect(fresh, hereCell, cell));
            }

            var k1 = slowing * friction * pace;
            var middleSlip = slip + (half * h * k1);
            var middlePace = one / (finalX + (middleSlip * shareX));
            var middleSlope = (finalY + (middleSlip * shareY)) * middlePace;
            var middleBoard = board + (quarter * h * (slope + middleSlope));
            var middleFriction = grid.Friction(stretch, start + (half * h), middleBoard, out _, out _);
            var k2 = slowing * middleFriction * middlePace;

            var lateSlip = slip + (h * k2);
            var latePace = one / (finalX + (lateSlip * shareX));
            var lateSlope = (finalY + (lateSlip * shareY)) * latePace;
            var lateBoard = board + (half * h * (slope + lateSlope));
            latePace *= one - (latePace * shareX * h * (k2 - k1));
            var lateFriction = grid.Friction(stretch, end, lateBoard, out var lateCell, out var lateOil);
            var k3 = slowing * lateFriction * latePace;

            var nextSlip = slip + (h * sixth * (k1 + (four * k2) + k3));
            if (cell != lateCell)
            {
                nextSlip += Bends(grid, stretch, start, h, board, slope, lateSlope, cell, lateCell, friction, middleFriction, lateFriction) * slowing * middlePace;
            }

            var nextPace = one / (finalX + (nextSlip * shareX));
            var nextSlope = (finalY + (nextSlip * shareY)) * nextPace;
            middleSlip = (half * (slip + nextSlip)) + (eighth * h * (k1 - k3));
            middlePace = one / (finalX + (middleSlip * shareX));
            middleSlope = (finalY + (middleSlip * shareY)) * middlePace;
            var nextBoard = board + (h * sixth * (slope + (four * middleSlope) + nextSlope));
            var nextSeconds = seconds + (h * sixth * (pace + (four * middlePace) + nextPace));

            var happens = isSliding & (Vector256.LessThanOrEqual(nextSlip, Vector256<double>.Zero)
                | (Vector256.GreaterThan(slip, straight) & Vector256.LessThanOrEqual(nextSlip, straight))
                | Vector256.LessThan(nextBoard, nearEdge) | Vector256.GreaterThan(nextBoard, farEdge));
            if (tracks[0].Pieces is not null || happens != Vector256<double>.Zero)
            {
                for (var lane = 0; lane < Width; lane++)
                {
                    ref var track = ref tracks[lane];
                    if (track.IsSliding && (happens.AsInt64()[lane] != 0 || track.Pieces is not null))
                    {
                        track.Step(
                            start[lane],
                            end[lane],
                            new PathState(slip[lane], board[lane], seconds[lane], k1[lane]),
                            new PathState(nextSlip[lane], nextBoard[lane], nextSeconds[lane], k3[lane]));
                        if (!track.IsSliding)
                        {
                            isSliding = Vector256.AndNot(isSliding, Vector256.Equals(Vector256.Create(0.0, 1, 2, 3), Vector256.Create((double)lane)));
                        }
                    }
                }

                if (isSliding == Vector256<double>.Zero)
                {
                    return 0;
                }
            }

            friction = lateFriction + (grid.Slope(lateFriction, lateOil) * (nextBoard - lateBoard));
            (slip, board, seconds, pace, slope, cell) = (nextSlip, nextBoard, nextSeconds, nextPace, nextSlope, lateCell);
            first = Vector256<double>.Zero;
        }

        var left = 0;
        for (var lane = 0; lane < Width; lane++)
        {
            ref var track = ref tracks[lane];
            if (track.IsSliding)
            {
                track.State = new PathState(slip[lane], board[lane], seconds[lane], 0);
                left++;
            }
        }

        return left;
    }

    /// <summary>
    /// What a step misses of the friction where it crosses middles of boards: there the oil bends. For a bend at some share of
    /// the step the exact integral and Simpson's rule differ by a known part of length².
    /// </summary>
    /// <returns>Friction × metres; 0 where nothing is crossed.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Bends(
        FrictionGrid grid,
        in GridStretch stretch,
        Vector256<double> start,
        Vector256<double> h,
        Vector256<double> board,
        Vector256<double> slope,
        Vector256<double> lateSlope,
        Vector256<double> cell,
        Vector256<double> lateCell,
        Vector256<double> friction,
        Vector256<double> middleFriction,
        Vector256<double> lateFriction)
    {
        var (zero, one, half, sixth) = (Vector256<double>.Zero, Vector256.Create(1.0), Vector256.Create(0.5), Vector256.Create(1 / 6.0));
        var inward = Vector256.GreaterThan(lateCell, cell);
        var side = Vector256.ConditionalSelect(inward, one, -one);
        var sum = zero;
        var line = Vector256.ConditionalSelect(inward, cell + one, cell);
        var lastLine = Vector256.ConditionalSelect(inward, lateCell, lateCell + one);
        var crosses = ~Vector256.Equals(cell, lateCell);
        while (crosses != zero)
        {
            // Where the parabola of this step meets the line, and how steeply.
            var way = line - board;
            var steep = side * Vector256.Sqrt(Vector256.Max(zero, (slope * slope) + (Vector256.Create(2.0) * (lateSlope - slope) * way / h)));
            var share = Vector256.Create(2.0) * way / ((slope + steep) * h);
            share = Vector256.Min(Vector256.Max(share, zero), one);
            var rest = one - share;
            var missed = (half * rest * rest) - (sixth * (rest + (Vector256.Create(4.0) * Vector256.Max(zero, half - share))));
            var bowed = (friction - middleFriction) + (lateFriction - middleFriction);
            var there = friction + (share * ((lateFriction - friction) - (Vector256.Create(2.0) * rest * bowed)));
            var bend = grid.Slope(there, grid.Bend(stretch, start + (share * h), line)) * Vector256.Abs(steep) * h * h * missed;
            sum += Vector256.ConditionalSelect(crosses & Vector256.Equals(bend, bend), bend, zero);
            crosses &= ~Vector256.Equals(line, lastLine);
            line += side & crosses;
        }

        return sum;
    }

    private delegate double Value(in Track track);

    private static Vector256<double> Of(ReadOnlySpan<Track> tracks, Value value) =>
        Vector256.Create(value(tracks[0]), value(tracks[1]), value(tracks[2]), value(tracks[3]));
}
