using Silk.NET.OpenGL;

namespace AimTrainer.Display;

/// <summary>A linked program of the GPU.</summary>
internal sealed class ShaderProgram : IDisposable
{
    private readonly GL _gl;
    private readonly uint _program;

    /// <exception cref="InvalidOperationException">The driver refuses it; the text is the driver's.</exception>
    public ShaderProgram(GL gl, string vertex, string fragment)
    {
        _gl = gl;
        _program = gl.CreateProgram();
        var parts = new[] { Compile(ShaderType.VertexShader, vertex), Compile(ShaderType.FragmentShader, fragment) };
        foreach (var part in parts)
        {
            gl.AttachShader(_program, part);
        }

        gl.LinkProgram(_program);
        foreach (var part in parts)
        {
            gl.DetachShader(_program, part);
            gl.DeleteShader(part);
        }

        if (gl.GetProgram(_program, ProgramPropertyARB.LinkStatus) == 0)
        {
            throw new InvalidOperationException($"the graphics driver did not link a program of the display: {gl.GetProgramInfoLog(_program)}");
        }
    }

    public void Use() => _gl.UseProgram(_program);

    public int Place(string uniform) => _gl.GetUniformLocation(_program, uniform);

    /// <inheritdoc/>
    public void Dispose() => _gl.DeleteProgram(_program);

    private uint Compile(ShaderType type, string source)
    {
        var shader = _gl.CreateShader(type);
        _gl.ShaderSource(shader, source);
        _gl.CompileShader(shader);
        return _gl.GetShader(shader, ShaderParameterName.CompileStatus) != 0
            ? shader
            : throw new InvalidOperationException($"the graphics driver did not compile a shader of the display: {_gl.GetShaderInfoLog(shader)}");
    }
}
