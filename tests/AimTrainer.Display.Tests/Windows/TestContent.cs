using System.Threading.Channels;
using AimTrainer.Calibration;
using Silk.NET.OpenGL;

namespace AimTrainer.Display.Tests;

/// <summary>A window's content that is one colour, and tells the test what happens to it.</summary>
internal sealed class TestContent : IWindowContent, IFramePainter
{
    private readonly Channel<PictureSize> _frames = Channel.CreateBounded<PictureSize>(1000);
    private readonly Channel<KeyPress> _presses = Channel.CreateBounded<KeyPress>(100);
    private GL? _gl;
    private int _wanted = 1;
    private int _drawn;

    public IFramePainter Painter => this;

    public TimeSpan? ChangesIn => null;

    /// <summary>The colour to draw, 0xRRGGBB.</summary>
    public int Colour { get; set; } = 0x3366CC;

    public bool FailsToStart { get; init; }

    public bool FailsToPaint { get; set; }

    public int Frames { get; private set; }

    public bool IsDisposed { get; private set; }

    public WindowPlace? Place { get; private set; }

    /// <summary>Bytes this thread had allocated before a frame that is to be held against a later one.</summary>
    public long AllocatedBefore { get; private set; }

    public long AllocatedAfter { get; private set; }

    /// <summary>From which frame to which the allocations are counted.</summary>
    public (int From, int To) Counted { get; init; }

    public void Want() => Interlocked.Increment(ref _wanted);

    public async Task<PictureSize> FrameAsync() => await _frames.Reader.ReadAsync(TestContext.Current.CancellationToken);

    /// <summary>Reads frames until one of this size.</summary>
    public async Task FrameOfAsync(int width, int height)
    {
        while (await FrameAsync() != new PictureSize(width, height))
        {
        }
    }

    public void Start(GL gl)
    {
        if (FailsToStart)
        {
            throw new InvalidOperationException("the shader does not compile");
        }

        _gl = gl;
    }

    public bool Refresh(PictureSize size) => Volatile.Read(ref _wanted) != _drawn;

    public void Placed(WindowPlace place) => Place = place;

    public bool Press(KeyPress press)
    {
        _presses.Writer.TryWrite(press);
        return press.Key != ConsoleKey.Escape;
    }

    public async Task<KeyPress> PressAsync() => await _presses.Reader.ReadAsync(TestContext.Current.CancellationToken);

    public void Paint(PictureSize size)
    {
        if (FailsToPaint)
        {
            throw new InvalidOperationException("the driver is gone");
        }

        _drawn = Volatile.Read(ref _wanted);
        _gl!.Viewport(0, 0, (uint)size.Width, (uint)size.Height);
        _gl.ClearColor(((Colour >> 16) & 255) / 255f, ((Colour >> 8) & 255) / 255f, (Colour & 255) / 255f, 1);
        _gl.Clear(ClearBufferMask.ColorBufferBit);
        Frames++;
        if (Counted.To == 0)
        {
            // Xvfb shows what was drawn when the client's requests have reached it.
            _gl.Finish();
            _frames.Writer.TryWrite(size);
        }
        else if (Frames == Counted.From)
        {
            AllocatedBefore = GC.GetAllocatedBytesForCurrentThread();
        }
        else if (Frames == Counted.To)
        {
            AllocatedAfter = GC.GetAllocatedBytesForCurrentThread();
        }
    }

    public void Dispose() => IsDisposed = true;
}
