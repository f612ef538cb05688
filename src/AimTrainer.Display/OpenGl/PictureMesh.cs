namespace AimTrainer.Display;

/// <summary>A picture worked out down to its pixels: rectangles back to front, and the coverage of those that edges cut.</summary>
internal sealed class PictureMesh
{
    /// <summary>From how many pixels on an opaque rectangle is worth a change of program.</summary>
    private const int LargeArea = 2048;

    private readonly Dimming? _dimming;
    private readonly List<MeshBatch> _batches = [];
    private readonly List<MeshVertex> _opaque = [];
    private MeshVertex[] _vertices = new MeshVertex[4096];
    private byte[] _coverage = new byte[1 << 16];
    private int _vertexCount;
    private int _coverageCount;

    /// <param name="dimming">What dims the picture along its overlaps; null for nothing.</param>
    public PictureMesh(Dimming? dimming)
    {
        _dimming = dimming;
        _coverage[0] = byte.MaxValue;
        _coverageCount = 1;
    }

    /// <summary>Four corners for each rectangle.</summary>
    public ReadOnlySpan<MeshVertex> Vertices => _vertices.AsSpan(0, _vertexCount);

    /// <summary>One byte a pixel, 255 wholly covered; the first is 255, for all that is solid.</summary>
    public ReadOnlySpan<byte> Coverage => _coverage.AsSpan(0, _coverageCount);

    /// <summary>How many rectangles there are.</summary>
    public int Rectangles => _vertexCount / 4;

    /// <summary>The storage behind <see cref="Coverage"/>, filled up to whole rows of this many bytes.</summary>
    public ReadOnlySpan<byte> CoverageRows(int row)
    {
        var whole = (_coverageCount + row - 1) / row * row;
        Room(whole);
        return _coverage.AsSpan(0, whole);
    }

    /// <summary>The rectangles by how they are drawn, back to front.</summary>
    public IReadOnlyList<MeshBatch> Batches => _batches;

    /// <summary>Adds a rectangle that is wholly covered.</summary>
    public void AddSolid(int x, int y, int width, int height, MeshColour colour)
    {
        if (colour.IsOpaque && width * height >= LargeArea && _dimming?.Touches(x, y, width, height) != true)
        {
            _opaque.Add(new MeshVertex(x, y, 0, 0, colour.Srgb));
            _opaque.Add(new MeshVertex(x + width, y, 0, 0, colour.Srgb));
            _opaque.Add(new MeshVertex(x, y + height, 0, 0, colour.Srgb));
            _opaque.Add(new MeshVertex(x + width, y + height, 0, 0, colour.Srgb));
        }
        else
        {
            Add(x, y, width, height, 0, 0, colour.Linear);
        }
    }

    /// <summary>Ends a shape. Its rectangles do not overlap, so those that are drawn the same way go together.</summary>
    public void EndShape()
    {
        if (_opaque.Count == 0)
        {
            return;
        }

        foreach (var vertex in _opaque)
        {
            Add(vertex);
        }

        Count(isOpaque: true, _opaque.Count / 4);
        _opaque.Clear();
    }

    /// <summary>Adds a rectangle and gives the room for its coverage, row by row.</summary>
    public Span<byte> AddTile(int x, int y, int width, int height, MeshColour colour)
    {
        Add(x, y, width, height, _coverageCount - (y * width) - x, width, colour.Linear);
        var (start, length) = (_coverageCount, width * height);
        Room(checked(start + length));
        _coverageCount += length;
        return _coverage.AsSpan(start, length);
    }

    private void Add(int x, int y, int width, int height, int at, int stride, LinearColour colour)
    {
        Add(new MeshVertex(x, y, at, stride, colour));
        Add(new MeshVertex(x + width, y, at, stride, colour));
        Add(new MeshVertex(x, y + height, at, stride, colour));
        Add(new MeshVertex(x + width, y + height, at, stride, colour));
        Count(isOpaque: false, 1);
    }

    private void Add(MeshVertex vertex)
    {
        if (_vertexCount == _vertices.Length)
        {
            Array.Resize(ref _vertices, _vertices.Length * 2);
        }

        _vertices[_vertexCount++] = vertex;
    }

    private void Count(bool isOpaque, int rectangles)
    {
        if (_batches.Count > 0 && _batches[^1].IsOpaque == isOpaque)
        {
            _batches[^1] = _batches[^1] with { Count = _batches[^1].Count + rectangles };
        }
        else
        {
            _batches.Add(new MeshBatch(isOpaque, Rectangles - rectangles, rectangles));
        }
    }

    private void Room(int bytes)
    {
        if (bytes > _coverage.Length)
        {
            Array.Resize(ref _coverage, (int)Math.Max(bytes, Math.Min(2L * _coverage.Length, Array.MaxLength)));
        }
    }
}
