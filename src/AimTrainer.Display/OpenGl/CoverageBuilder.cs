using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>
/// How much of each pixel a shape covers, exactly: the area of the shape within the pixel's square, by the signed areas of its edges
/// (non-zero winding). What is cut by an edge is kept as tiles of bytes, what lies wholly inside as rectangles without any.
/// </summary>
/// <remarks>
/// Edges between pixels are whole numbers, so that tiles and rectangles neither overlap nor leave a seam on any GPU. Source of the sums: the
/// cells of the anti-aliased scan converters in common use (one running sum along a row of what each edge covers).
/// </remarks>
internal sealed class CoverageBuilder(PictureSize size)
{
    /// <summary>What one more rectangle costs, in pixels that are drawn for nothing.</summary>
    private const int CostOfRectangle = 20;

    /// <summary>Tiles of a row this near to each other become one.</summary>
    private const int NearEnough = 6;

    private readonly int[] _starts = new int[size.Height + 1];
    private readonly List<Run> _slab = [];
    private readonly List<Run> _row = [];
    private readonly List<Run> _union = [];
    private Cell[] _found = new Cell[1024];
    private Cell[] _sorted = new Cell[1024];
    private int _count;
    private int _top = size.Height;
    private int _bottom;

    /// <summary>Adds an edge of a closed contour, within the picture.</summary>
    public void AddEdge(XY from, XY to)
    {
        var direction = from.Y <= to.Y ? 1 : -1;
        var (upper, lower) = direction > 0 ? (from, to) : (to, from);
        var first = (int)Math.Floor(upper.Y);
        var beyond = (int)Math.Ceiling(lower.Y);
        if (first >= beyond)
        {
            return; // Along the line between two rows of pixels: it cuts none.
        }

        (_top, _bottom) = (Math.Min(_top, first), Math.Max(_bottom, beyond));
        if (upper.Y == lower.Y)
        {
            AddRow(first, 0, upper.X, lower.X, direction);
            return;
        }

        var slope = (lower.X - upper.X) / (lower.Y - upper.Y);
        var (low, high) = upper.X < lower.X ? (upper.X, lower.X) : (lower.X, upper.X);
        var (y, x) = (upper.Y, upper.X);
        for (var row = first; row < beyond; row++)
        {
            var end = Math.Min(lower.Y, row + 1);
            var nextX = end == lower.Y ? lower.X : Math.Clamp(upper.X + ((end - upper.Y) * slope), low, high);
            AddRow(row, end - y, x, nextX, direction);
            (y, x) = (end, nextX);
        }
    }

    /// <summary>Writes what the edges since the last call enclose, in one colour, and starts anew.</summary>
    public void Write(PictureMesh mesh, MeshColour colour)
    {
        Sort();
        var from = _top;
        _slab.Clear();
        for (var row = _top; row < _bottom; row++)
        {
            RunsOf(row);
            if (row > from && TryJoin(row - from))
            {
                _slab.Clear();
                _slab.AddRange(_union);
                continue;
            }

            WriteSlab(mesh, colour, from, row);
            from = row;
            _slab.Clear();
            _slab.AddRange(_row);
        }

        WriteSlab(mesh, colour, from, Math.Max(from, _bottom));
        mesh.EndShape();
        (_count, _top, _bottom) = (0, size.Height, 0);
    }

    private void AddRow(int row, double height, double fromX, double toX, int direction)
    {
        var column = (int)Math.Floor(Math.Min(fromX, toX));
        var last = Math.Max(column, (int)Math.Ceiling(Math.Max(fromX, toX)) - 1);
        if (column == last)
        {
            var dy = height * direction;
            Add(row, column, dy, dy * (1 - (((fromX + toX) / 2) - column)));
            return;
        }

        // The edge crosses several pixels of the row: each gets its share of the height.
        var (low, high) = fromX < toX ? (fromX, toX) : (toX, fromX);
        var perColumn = height * direction / (high - low);
        for (; column <= last; column++)
        {
            var (left, right) = (Math.Max(low, column), Math.Min(high, column + 1));
            var dy = perColumn * (right - left);
            Add(row, column, dy, dy * (1 - (((left + right) / 2) - column)));
        }
    }

    private void Add(int row, int column, double cover, double area)
    {
        if (column >= size.Width)
        {
            return; // Nothing to the right of it is seen.
        }

        if (_count == _found.Length)
        {
            Array.Resize(ref _found, _count * 2);
        }

        _found[_count++] = new Cell(row, column, (float)cover, (float)area);
    }

    /// <summary>By row, then by column.</summary>
    private void Sort()
    {
        if (_sorted.Length < _found.Length)
        {
            _sorted = new Cell[_found.Length];
        }

        if (_count == 0)
        {
            _top = _bottom = 0;
            return;
        }

        Array.Clear(_starts, _top, _bottom - _top + 1);
        for (var i = 0; i < _count; i++)
        {
            _starts[_found[i].Row + 1]++;
        }

        for (var row = _top; row < _bottom; row++)
        {
            _starts[row + 1] += _starts[row];
        }

        for (var i = 0; i < _count; i++)
        {
            // Moves each start up to its own end, which is the start of the next row.
            _sorted[_starts[_found[i].Row]++] = _found[i];
        }

        for (var row = _top; row < _bottom; row++)
        {
            _sorted.AsSpan(FirstOf(row), _starts[row] - FirstOf(row)).Sort(static (a, b) => a.Column.CompareTo(b.Column));
        }
    }

    private int FirstOf(int row) => row == _top ? 0 : _starts[row - 1];

    /// <summary>The pixels of a row that edges cut, and whether what follows each run is inside.</summary>
    private void RunsOf(int row)
    {
        _row.Clear();
        var sum = 0.0;
        for (var i = FirstOf(row); i < _starts[row]; i++)
        {
            var cell = _sorted[i];
            if (_row.Count > 0 && cell.Column <= _row[^1].End + NearEnough)
            {
                sum += cell.Cover;
                _row[^1] = new Run(_row[^1].Start, Math.Max(_row[^1].End, cell.Column + 1), IsInside(sum));
            }
            else
            {
                sum += cell.Cover;
                _row.Add(new Run(cell.Column, cell.Column + 1, IsInside(sum)));
            }
        }
    }

    /// <summary>Whether the row goes into the slab above it at no greater cost than on its own; the runs of both are then in the union.</summary>
    private bool TryJoin(int rows)
    {
        if (_slab.Count == 0 || _row.Count == 0)
        {
            _union.Clear();
            return _slab.Count == _row.Count;
        }

        Unite();
        var (slabWidth, rowWidth, unionWidth, rectangles) = (Width(_slab), Width(_row), Width(_union), _row.Count);
        foreach (var run in _row)
        {
            rectangles += run.InsideAfter ? 1 : 0;
        }

        if (unionWidth * (rows + 1) > (slabWidth * rows) + rowWidth + (CostOfRectangle * rectangles))
        {
            return false;
        }

        // Between the runs both must agree: an edge that lies just between the two rows is in no pixel.
        for (var i = 0; i + 1 < _union.Count; i++)
        {
            var inside = InsideAt(_slab, _union[i].End);
            if (inside != InsideAt(_row, _union[i].End))
            {
                return false;
            }

            _union[i] = _union[i] with { InsideAfter = inside };
        }

        // To the right of the last run lies the rest of the picture, which nothing encloses, or what is cut off at the right side.
        var (slabAfter, rowAfter) = (_slab[^1].InsideAfter, _row[^1].InsideAfter);
        _union[^1] = _union[^1] with { InsideAfter = slabAfter };
        return slabAfter == rowAfter;
    }

    private void Unite()
    {
        _union.Clear();
        var (i, j) = (0, 0);
        while (i < _slab.Count || j < _row.Count)
        {
            var next = j == _row.Count || (i < _slab.Count && _slab[i].Start <= _row[j].Start) ? _slab[i++] : _row[j++];
            if (_union.Count > 0 && next.Start <= _union[^1].End + NearEnough)
            {
                _union[^1] = new Run(_union[^1].Start, Math.Max(_union[^1].End, next.End), InsideAfter: false);
            }
            else
            {
                _union.Add(next with { InsideAfter = false });
            }
        }
    }

    private void WriteSlab(PictureMesh mesh, MeshColour colour, int from, int to)
    {
        if (from >= to)
        {
            return;
        }

        for (var i = 0; i < _slab.Count; i++)
        {
            var run = _slab[i];
            WriteTile(mesh.AddTile(run.Start, from, run.End - run.Start, to - from, colour), run, from, to);
            if (run.InsideAfter)
            {
                var end = i + 1 < _slab.Count ? _slab[i + 1].Start : size.Width;
                if (end > run.End)
                {
                    mesh.AddSolid(run.End, from, end - run.End, to - from, colour);
                }
            }
        }
    }

    private void WriteTile(Span<byte> tile, Run run, int from, int to)
    {
        var at = 0;
        for (var row = from; row < to; row++)
        {
            var (sum, cell, last) = (0.0, FirstOf(row), _starts[row]);
            for (; cell < last && _sorted[cell].Column < run.Start; cell++)
            {
                sum += _sorted[cell].Cover;
            }

            for (var column = run.Start; column < run.End; column++)
            {
                var covered = sum;
                for (; cell < last && _sorted[cell].Column == column; cell++)
                {
                    covered += _sorted[cell].Area;
                    sum += _sorted[cell].Cover;
                }

                tile[at++] = (byte)((Math.Min(1, Math.Abs(covered)) * 255) + 0.5);
            }
        }
    }

    private static bool IsInside(double sum) => Math.Abs(sum) > 0.5;

    private static bool InsideAt(List<Run> runs, int column)
    {
        var inside = false;
        foreach (var run in runs)
        {
            if (run.End > column)
            {
                break;
            }

            inside = run.InsideAfter;
        }

        return inside;
    }

    private static int Width(List<Run> runs)
    {
        var width = 0;
        foreach (var run in runs)
        {
            width += run.End - run.Start;
        }

        return width;
    }

    /// <summary>What the edges in one pixel add: to the pixel itself (Area) and to all to the right of it (Cover).</summary>
    private readonly record struct Cell(int Row, int Column, float Cover, float Area);

    /// <summary>Pixels of a row that edges cut, Start to before End.</summary>
    private readonly record struct Run(int Start, int End, bool InsideAfter);
}
