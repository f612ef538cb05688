using AimTrainer.Calibration;

namespace AimTrainer.Display.Tests;

/// <summary>A surface without X opens, or says in one line why not and how to get it.</summary>
public sealed class EglSurfaceTests
{
    private static readonly PictureSize _size = new(64, 64);

    [Fact]
    public void Open_OnThisMachine_DrawsAndSaysWithWhat()
    {
        using var surface = OpenGlSurface.Open(_size);
        Assert.Contains("OpenGL", surface.Driver, StringComparison.Ordinal);
        Assert.Equal(_size, surface.Size);
    }

    [Fact]
    public void Load_NoLibrary_IsNone() => Assert.Null(EglLibrary.Load(_ => 0));

    [Fact]
    public void Load_LibraryThatIsNotEgl_IsNone() =>
        Assert.Null(EglLibrary.Load(_ => System.Runtime.InteropServices.NativeLibrary.GetMainProgramHandle()));

    [Fact]
    public void Open_NoLibrary_SaysWhichPackagesToInstall() => Says(EglSurface.Open(_size, () => null), "no libEGL", "libegl1", "libgl1-mesa-dri");

    [Fact]
    public void Open_NoDisplay_SaysSo()
    {
        Says(EglSurface.Open(_size, () => new BrokenEgl(BrokenEgl.Part.Places)), "no display that works without X", "libegl1");
        Says(EglSurface.Open(_size, () => new BrokenEgl(BrokenEgl.Part.Display)), "opened no display", "not initialised", "libgl1-mesa-dri");
    }

    [Fact]
    public void Open_NoConfiguration_SaysSo() =>
        Says(EglSurface.Open(_size, () => new BrokenEgl(BrokenEgl.Part.Config)), "Vendor of Tests", "no configuration for desktop OpenGL");

    [Fact]
    public void Open_ContextRefused_SaysSo() =>
        Says(EglSurface.Open(_size, () => new BrokenEgl(BrokenEgl.Part.Context)), "refused a context of OpenGL 3.3", "not initialised");

    [Fact]
    public void Open_ContextNotMadeCurrent_SaysSoAndGivesItBack()
    {
        var egl = new BrokenEgl(BrokenEgl.Part.Current);
        Says(EglSurface.Open(_size, () => egl), "did not make its context current");
        Assert.Equal(1, egl.Released);
    }

    [Fact]
    public void Open_PictureLargerThanTheDriverDraws_SaysHowLargeItMayBe() =>
        Says(EglSurface.Open(new(1_000_000, 10)), "1000000 x 10", "at most");

    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, -1)]
    public void Open_PictureOfNothing_Throws(int width, int height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EglSurface.Open(new(width, height)));

    [Fact]
    public void Read_TooSmallAPlace_Throws()
    {
        using var surface = OpenGlSurface.Open(_size);
        Assert.Throws<ArgumentOutOfRangeException>(() => surface.Read(new byte[10]));
    }

    private static void Says(EglOpened opened, params string[] parts)
    {
        Assert.False(opened.Worked);
        Assert.Null(opened.Surface);
        Assert.DoesNotContain('\n', opened.Problem);
        Assert.All(parts, part => Assert.Contains(part, opened.Problem, StringComparison.Ordinal));
    }

    /// <summary>An EGL in which one part fails.</summary>
    private sealed class BrokenEgl(BrokenEgl.Part broken) : IEgl
    {
        public enum Part
        {
            Places,
            Display,
            Config,
            Context,
            Current,
        }

        public int Released { get; private set; }

        public nint FunctionOf(string name) => 0;

        public IReadOnlyList<EglPlace> Places() => broken == Part.Places ? [] : [new EglPlace(EglLibrary.PlatformSurfaceless, 0, IsSoftware: false)];

        public nint Open(EglPlace place) => Unless(Part.Display);

        public string VendorOf(nint display) => "Vendor of Tests";

        public nint ConfigOf(nint display) => Unless(Part.Config);

        public nint ContextOf(nint display, nint config) => Unless(Part.Context);

        public nint TinySurfaceOf(nint display, nint config) => 1;

        public bool MakeCurrent(nint display, nint surface, nint context) => broken != Part.Current;

        public void Release(nint display, nint surface, nint context) => Released++;

        public string LastError() => "not initialised";

        private nint Unless(Part part) => broken == part ? 0 : 1;
    }
}
