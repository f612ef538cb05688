using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>One ball on its way: where it is, and what has happened to it.</summary>
internal struct Track
{
    public static readonly double NearEdge = Board.NearEdge.Boards;
    public static readonly double FarEdge = Board.FarEdge.Boards;
    private static readonly double _laneCentre = Board.LaneCentre.Boards;

    private double _arrows, _breakBoard, _breakMetres, _rollMetres, _gutterMetres;

    public Track(in Slide slide, List<PathPiece>? pieces)
    {
        Slide = slide;
        Pieces = pieces;
        State = new PathState(slide.Slip, slide.Y, 0, 0);
        (_arrows, _breakBoard, _breakMetres, _rollMetres, _gutterMetres) = (double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        IsSliding = true;
        if (slide.Slip == 0)
        {
            Roll(slide.X, State);
        }
    }

    public readonly Slide Slide { get; }

    public List<PathPiece>? Pieces { get; }

    /// <summary>Whether it still slides on the lane; else it rolls, or lies in a gutter.</summary>
    public bool IsSliding { get; private set; }

    /// <summary>Where it is: at the end of the last stretch, where it began to roll, or where it left the boards.</summary>
    public PathState State { get; set; }

    /// <summary>Takes in a step of the integration in which something happens (or any, when the pieces are wanted).</summary>
    public void Step(double start, double end, in PathState from, in PathState to)
    {
        var length = end - start;
        if (length <= 0)
        {
            return;
        }

        var limit = to.Slip <= 0 ? Motion.Step.WhereSlip(from, to, length, 0, Slide) : length;
        var last = limit < length ? Motion.Step.At(from, to, length, limit, Slide) with { Slip = 0 } : to with { Slip = Math.Max(to.Slip, 0) };
        var outermost = from.Board;
        var atOutermost = 0.0;
        if (from.Slip > Slide.Straight && last.Slip <= Slide.Straight)
        {
            atOutermost = Motion.Step.WhereSlip(from, to, length, Slide.Straight, Slide);
            outermost = Motion.Step.At(from, to, length, atOutermost, Slide).Board;
        }

        var (gutter, edge) = outermost < NearEdge ? (atOutermost, NearEdge)
            : last.Board < NearEdge ? (limit, NearEdge)
            : last.Board > FarEdge ? (limit, FarEdge) : (double.NaN, 0);
        if (!double.IsNaN(gutter))
        {
            limit = Motion.Step.WhereBoard(from, to, length, gutter, edge, Slide);
            last = Motion.Step.At(from, to, length, limit, Slide) with { Board = edge };
            Leave(start + limit, last);
        }
        else
        {
            if (atOutermost > 0)
            {
                (_breakMetres, _breakBoard) = (start + atOutermost, outermost);
            }

            if (to.Slip <= 0)
            {
                Roll(start + limit, last);
            }
        }

        Pieces?.Add(new PathPiece(start, start + limit, length, from, to, double.NaN));
    }

    /// <summary>Crosses a stretch of even friction.</summary>
    public void Even(in GridStretch stretch)
    {
        if (!IsSliding || stretch.End <= Slide.X)
        {
            return;
        }

        var (start, from) = (Math.Max(stretch.Start, Slide.X), State);
        var rate = Slide.Slowing * stretch.Even;
        var toEnd = Parabola.SecondsTo(from, stretch.End - start, rate, Slide);
        var toRoll = rate > 0 ? from.Slip / rate : double.PositiveInfinity;
        var stop = Math.Min(toEnd, toRoll);
        var turn = from.Slip > Slide.Straight && rate > 0 ? (from.Slip - Slide.Straight) / rate : double.PositiveInfinity;
        var last = Parabola.After(from, stop, rate, Slide);
        var outermost = turn <= stop ? Parabola.After(from, turn, rate, Slide).Board : from.Board;
        var leaves = outermost < NearEdge ? Parabola.SecondsToBoard(from, NearEdge, turn, rate, Slide)
            : last.Board < NearEdge ? Parabola.SecondsToBoard(from, NearEdge, stop, rate, Slide)
            : last.Board > FarEdge ? Parabola.SecondsToBoard(from, FarEdge, stop, rate, Slide) : double.PositiveInfinity;
        if (leaves <= stop)
        {
            last = Parabola.After(from, leaves, rate, Slide) with { Board = outermost < NearEdge || last.Board < NearEdge ? NearEdge : FarEdge };
            Leave(start + Parabola.MetresIn(from, leaves, rate, Slide), last);
            Pieces?.Add(new PathPiece(start, _gutterMetres, _gutterMetres - start, from, last, rate));
            return;
        }

        if (turn <= stop)
        {
            (_breakMetres, _breakBoard) = (start + Parabola.MetresIn(from, turn, rate, Slide), outermost);
        }

        if (toRoll <= toEnd)
        {
            Roll(start + Parabola.MetresIn(from, stop, rate, Slide), last with { Slip = 0 });
        }
        else
        {
            State = last;
        }

        var end = IsSliding ? stretch.End : _rollMetres;
        Pieces?.Add(new PathPiece(start, end, end - start, from, last, rate));
    }

    /// <summary>Notes where a ball is at the arrows.</summary>
    public void AtArrows(double metres)
    {
        if (IsSliding && Slide.X <= metres)
        {
            _arrows = State.Board;
        }
    }

    /// <summary>Rolls or slides to its end, and says what came of it.</summary>
    public PathEnd Finish(FrictionGrid grid, Ball ball)
    {
        var rolls = !double.IsNaN(_rollMetres);
        var rolled = State;
        if (rolls)
        {
            RollToTheEnd(grid.ArrowsMetres);
        }

        var inGutter = !double.IsNaN(_gutterMetres);
        var (forward, inward) = Velocity(State.Slip);
        inward *= grid.BoardMetres;
        var end = new PathEnd
        {
            Finish = inGutter ? PathFinish.Gutter : PathFinish.Pins,
            ArrowsBoard = _arrows,
            BreakpointBoard = _breakBoard,
            BreakpointFeet = _breakMetres / FrictionGrid.MetresPerFoot,
            RollFeet = _rollMetres / FrictionGrid.MetresPerFoot,
            RollSeconds = rolls ? rolled.Seconds : double.NaN,
            BoardAt60 = inGutter ? double.NaN : State.Board,
            AngleAt60Degrees = inGutter ? double.NaN : Math.Atan2(inward, forward) * 180 / Math.PI,
            EndFeet = inGutter ? _gutterMetres / FrictionGrid.MetresPerFoot : LaneSurface.EndFeet,
            EndSeconds = State.Seconds,
            EndMetresPerSecond = Math.Sqrt((forward * forward) + (inward * inward)),
            EndSlipMetresPerSecond = State.Slip,
            ContactBoard = double.NaN,
            ContactAngleDegrees = double.NaN,
            ContactFeet = double.NaN,
        };
        return inGutter ? end : WithContact(end, rolled, grid, ball);
    }

    private readonly PathEnd WithContact(in PathEnd end, in PathState rolled, FrictionGrid grid, Ball ball)
    {
        // Around the pin the ball runs straight, or on a parabola when it still slid there.
        var reach = ball.RadiusMetres + HeadPin.PinRadiusMetres;
        var (slides, from, metres) = double.IsNaN(_rollMetres) ? (true, State, FrictionGrid.EndMetres) : (false, rolled, _rollMetres);
        var (vx, vy) = Velocity(from.Slip);
        vy *= grid.BoardMetres;
        var (x, y) = (metres - FrictionGrid.EndMetres, (from.Board - _laneCentre) * grid.BoardMetres);
        var touch = slides ? null : HeadPin.Touch(x, y, vx, vy, 0, 0, reach);
        var (ax, ay) = (0.0, 0.0);
        if (slides || touch < 0)
        {
            var push = Slide.Push * grid.FrictionAt(metres, from.Board);
            (ax, ay) = (-push * Slide.DirectionX, -push * Slide.DirectionY);
            touch = HeadPin.Touch(x, y, vx, vy, ax, ay, reach);
        }

        return touch is not { } time
            ? end
            : end with
            {
                ContactFeet = (metres + (time * (vx + (time * ax / 2)))) / FrictionGrid.MetresPerFoot,
                ContactBoard = from.Board + (time * (vy + (time * ay / 2)) / grid.BoardMetres),
                ContactAngleDegrees = Math.Atan2(vy + (time * ay), vx + (time * ax)) * 180 / Math.PI,
            };
    }

    private void RollToTheEnd(double arrowsMetres)
    {
        var from = State;
        var last = Parabola.At(from, FrictionGrid.EndMetres - _rollMetres, 0, Slide);
        if (last.Board < NearEdge || last.Board > FarEdge)
        {
            var edge = last.Board < NearEdge ? NearEdge : FarEdge;
            var seconds = Parabola.SecondsToBoard(from, edge, double.PositiveInfinity, 0, Slide);
            Leave(_rollMetres + Parabola.MetresIn(from, seconds, 0, Slide), Parabola.After(from, seconds, 0, Slide) with { Board = edge });
        }
        else
        {
            State = last;
        }

        var end = double.IsNaN(_gutterMetres) ? FrictionGrid.EndMetres : _gutterMetres;
        if (_rollMetres <= arrowsMetres && arrowsMetres <= end)
        {
            _arrows = Parabola.At(from, arrowsMetres - _rollMetres, 0, Slide).Board;
        }

        Pieces?.Add(new PathPiece(_rollMetres, end, end - _rollMetres, from, State, 0));
    }

    private readonly (double Forward, double Inward) Velocity(double slip) =>
        (Slide.FinalX + (slip * Slide.ShareX), Slide.FinalY + (slip * Slide.ShareY));

    private void Roll(double metres, in PathState state)
    {
        IsSliding = false;
        _rollMetres = metres;
        State = state;
    }

    private void Leave(double metres, in PathState state)
    {
        IsSliding = false;
        _gutterMetres = metres;
        State = state;
    }
}
