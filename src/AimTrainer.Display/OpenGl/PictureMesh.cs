namespace AimTrainer.Display;

/// <summary>A picture worked out down to its pixels: rectangles back to front, and the coverage of those that edges cut.</summary>
internal sealed class PictureMesh
{
    private MeshVertex[] _vertices = new MeshVertex[4096];
    private byte[] _coverage = new byte[1 << 16];
    private int _vertexCount;
    private int _coverageCount;

    public PictureMesh() => Clear();

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

    public void Clear()
    {
        (_vertexCount, _coverageCount) = (0, 1);
        _coverage[0] = byte.MaxValue;
    }

    /// <summary>Adds a rectangle that is wholly covered.</summary>
    public void AddSolid(int x, int y, int width, int height, LinearColour colour) => Add(x, y, width, height, 0, 0, colour);

    /// <summary>Adds a rectangle and gives the room for its coverage, row by row.</summary>
    public Span<byte> AddTile(int x, int y, int width, int height, LinearColour colour)
    {
        Add(x, y, width, height, _coverageCount - (y * width) - x, width, colour);
        var (start, length) = (_coverageCount, width * height);
        Room(checked(start + length));
        _coverageCount += length;
        return _coverage.AsSpan(start, length);
    }

    private void Add(int x, int y, int width, int height, int at, int stride, LinearColour colour)
    {
        if (_vertexCount + 4 > _vertices.Length)
        {
            Array.Resize(ref _vertices, _vertices.Length * 2);
        }

        _vertices[_vertexCount++] = new MeshVertex(x, y, at, stride, colour);
        _vertices[_vertexCount++] = new MeshVertex(x + width, y, at, stride, colour);
        _vertices[_vertexCount++] = new MeshVertex(x, y + height, at, stride, colour);
        _vertices[_vertexCount++] = new MeshVertex(x + width, y + height, at, stride, colour);
    }

    private void Room(int bytes)
    {
        if (bytes > _coverage.Length)
        {
            Array.Resize(ref _coverage, (int)Math.Max(bytes, Math.Min(2L * _coverage.Length, Array.MaxLength)));
        }
    }
}
