using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>
/// Keeps a picture on the GPU and draws it. Everything about it is worked out and uploaded when it changes; a frame clears, binds and makes
/// a few calls, or copies the picture of the frame before.
/// </summary>
internal sealed unsafe class SceneRenderer : IDisposable
{
    /// <summary>A picture with more than one in so many of its pixels cut by edges is dearer to draw than to copy.</summary>
    private const int FewEdges = 10;

    private readonly GL _gl;
    private readonly ShaderProgram _opaque;
    private readonly ShaderProgram _plain;
    private readonly ShaderProgram _dimmed;
    private readonly uint _array;
    private readonly uint _vertices;
    private readonly uint _indices;
    private readonly uint _coverage;
    private readonly int _mostRows;
    private readonly DrawingTarget _target;
    private ShaderProgram _program;
    private LinearColour _background;
    private PictureSize _size;
    private MeshBatch[] _batches = [];
    private int _indexed;
    private int _rows;

    /// <param name="gl">The context.</param>
    /// <param name="copiesCheaply">See <see cref="ScenePainter.CopiesCheaply"/>.</param>
    /// <exception cref="InvalidOperationException">The driver refuses the programs.</exception>
    public SceneRenderer(GL gl, bool? copiesCheaply)
    {
        _gl = gl;
        _opaque = new ShaderProgram(gl, Shaders.Vertex, Shaders.Opaque);
        _plain = new ShaderProgram(gl, Shaders.Vertex, Shaders.Plain);
        _dimmed = new ShaderProgram(gl, Shaders.Vertex, Shaders.Dimmed);
        _program = _plain;
        _target = new DrawingTarget(gl, copiesCheaply);
        _mostRows = gl.GetInteger(GetPName.MaxTextureSize);
        (_array, _vertices, _indices, _coverage) = (gl.GenVertexArray(), gl.GenBuffer(), gl.GenBuffer(), gl.GenTexture());
        gl.BindVertexArray(_array);
        gl.BindBuffer(BufferTargetARB.ArrayBuffer, _vertices);
        gl.BindBuffer(BufferTargetARB.ElementArrayBuffer, _indices);
        var stride = (uint)sizeof(MeshVertex);
        gl.EnableVertexAttribArray(0);
        gl.VertexAttribPointer(0, 2, VertexAttribPointerType.Float, false, stride, (void*)0);
        gl.EnableVertexAttribArray(1);
        gl.VertexAttribIPointer(1, 2, VertexAttribIType.Int, stride, (void*)8);
        gl.EnableVertexAttribArray(2);
        gl.VertexAttribPointer(2, 4, VertexAttribPointerType.Float, false, stride, (void*)16);
        gl.BindVertexArray(0);
    }

    /// <summary>Takes a new picture. What was shown before is gone.</summary>
    /// <param name="mesh">The picture.</param>
    /// <param name="background">What it is cleared to, opaque.</param>
    /// <param name="size">The framebuffer it was worked out for.</param>
    /// <param name="dimming">For a projector that overlaps with another; null for none.</param>
    /// <exception cref="InvalidOperationException">More edges than the driver can hold.</exception>
    public void Take(PictureMesh mesh, LinearColour background, PictureSize size, Dimming? dimming)
    {
        (_background, _size) = (background, size);
        _batches = [];
        Upload(mesh);
        _batches = [.. mesh.Batches];
        _opaque.Use();
        _gl.Uniform2(_opaque.Place("uSize"), size.Width, (float)size.Height);
        _program = dimming is null ? _plain : _dimmed;
        _program.Use();
        _gl.Uniform2(_program.Place("uSize"), size.Width, (float)size.Height);
        _gl.Uniform1(_program.Place("uCoverage"), 0);
        dimming?.Set(_gl, _program);
        _target.Fit(size, isDear: mesh.Coverage.Length > (long)size.Width * size.Height / FewEdges);
    }

    /// <summary>Draws it into the bound framebuffer, which has the size that it was worked out for.</summary>
    public void Draw()
    {
        if (_target.Begin())
        {
            DrawAnew();
        }

        _target.End();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _target.Dispose();
        _opaque.Dispose();
        _plain.Dispose();
        _dimmed.Dispose();
        _gl.DeleteVertexArray(_array);
        _gl.DeleteBuffer(_vertices);
        _gl.DeleteBuffer(_indices);
        _gl.DeleteTexture(_coverage);
    }

    private void DrawAnew()
    {
        _gl.Viewport(0, 0, (uint)_size.Width, (uint)_size.Height);
        _gl.Disable(EnableCap.DepthTest);
        _gl.Disable(EnableCap.ScissorTest);
        _gl.Disable(EnableCap.CullFace);
        _gl.Enable(EnableCap.FramebufferSrgb);
        _gl.ClearColor(_background.Red, _background.Green, _background.Blue, 1);
        _gl.Clear(ClearBufferMask.ColorBufferBit);
        _gl.BlendFunc(BlendingFactor.One, BlendingFactor.OneMinusSrcAlpha);
        _gl.ActiveTexture(TextureUnit.Texture0);
        _gl.BindTexture(TextureTarget.Texture2D, _coverage);
        _gl.BindVertexArray(_array);
        foreach (var batch in _batches)
        {
            if (batch.IsOpaque)
            {
                // What covers a pixel wholly needs no light to be mixed: its bytes go there as they are.
                _gl.Disable(EnableCap.FramebufferSrgb);
                _gl.Disable(EnableCap.Blend);
                _opaque.Use();
            }
            else
            {
                // Colours are multiplied by their opacity, and the framebuffer turns to light before it blends.
                _gl.Enable(EnableCap.FramebufferSrgb);
                _gl.Enable(EnableCap.Blend);
                _program.Use();
            }

            _gl.DrawElements(PrimitiveType.Triangles, (uint)batch.Count * 6, DrawElementsType.UnsignedInt, (void*)(batch.First * 6 * sizeof(uint)));
        }

        _gl.BindVertexArray(0);
        _gl.Disable(EnableCap.Blend);
        _gl.Disable(EnableCap.FramebufferSrgb);
    }

    private void Upload(PictureMesh mesh)
    {
        var coverage = mesh.CoverageRows(Shaders.CoverageRow);
        var rows = coverage.Length / Shaders.CoverageRow;
        if (rows > _mostRows || Shaders.CoverageRow > _mostRows)
        {
            var most = FormattableString.Invariant($"{_mostRows} x {Shaders.CoverageRow}");
            throw new InvalidOperationException(FormattableString.Invariant(
                $"the scene has {coverage.Length} pixels cut by edges, more than this graphics driver holds ({most}): show fewer shapes or a smaller picture"));
        }

        _gl.BindVertexArray(_array);
        _gl.BindBuffer(BufferTargetARB.ArrayBuffer, _vertices);
        _gl.BufferData(BufferTargetARB.ArrayBuffer, mesh.Vertices, BufferUsageARB.DynamicDraw);
        if (mesh.Rectangles > _indexed)
        {
            _indexed = Math.Max(1024, mesh.Rectangles * 3 / 2);
            _gl.BufferData<uint>(BufferTargetARB.ElementArrayBuffer, IndicesFor(_indexed), BufferUsageARB.StaticDraw);
        }

        _gl.BindVertexArray(0);
        _gl.ActiveTexture(TextureUnit.Texture0);
        _gl.BindTexture(TextureTarget.Texture2D, _coverage);
        _gl.PixelStore(PixelStoreParameter.UnpackAlignment, 1);
        fixed (byte* bytes = coverage)
        {
            if (rows > _rows)
            {
                _rows = rows;
                _gl.TexImage2D(
                    TextureTarget.Texture2D, 0, InternalFormat.R8, Shaders.CoverageRow, (uint)rows, 0, PixelFormat.Red, PixelType.UnsignedByte, bytes);
                _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)TextureMinFilter.Nearest);
                _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMagFilter, (int)TextureMagFilter.Nearest);
                _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMaxLevel, 0);
            }
            else
            {
                _gl.TexSubImage2D(
                    TextureTarget.Texture2D, 0, 0, 0, Shaders.CoverageRow, (uint)rows, PixelFormat.Red, PixelType.UnsignedByte, bytes);
            }
        }
    }

    private static uint[] IndicesFor(int rectangles)
    {
        var indices = new uint[rectangles * 6];
        for (var i = 0; i < rectangles; i++)
        {
            var corner = (uint)i * 4;
            var at = indices.AsSpan(i * 6, 6);
            (at[0], at[1], at[2], at[3], at[4], at[5]) = (corner, corner + 1, corner + 2, corner + 2, corner + 1, corner + 3);
        }

        return indices;
    }
}
