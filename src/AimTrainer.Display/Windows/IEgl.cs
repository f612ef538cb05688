namespace AimTrainer.Display;

/// <summary>What an offscreen surface asks of EGL. Handles are 0 where there is none.</summary>
internal interface IEgl
{
    /// <summary>The address of a function of EGL or GL.</summary>
    nint FunctionOf(string name);

    /// <summary>The ways to a display that need no X, the best first.</summary>
    IReadOnlyList<EglPlace> Places();

    /// <summary>A display that is ready for use.</summary>
    nint Open(EglPlace place);

    /// <summary>Who made the driver of a display.</summary>
    string VendorOf(nint display);

    /// <summary>A configuration for desktop GL.</summary>
    nint ConfigOf(nint display);

    /// <summary>A context of GL 3.3 core.</summary>
    nint ContextOf(nint display, nint config);

    /// <summary>A surface of one pixel, for drivers that make no context current without one.</summary>
    nint TinySurfaceOf(nint display, nint config);

    /// <summary>Makes a context current on this thread.</summary>
    bool MakeCurrent(nint display, nint surface, nint context);

    /// <summary>Gives a context and its surface back; the display stays, it is shared by all that the process opens on it.</summary>
    void Release(nint display, nint surface, nint context);

    /// <summary>What went wrong last, in words.</summary>
    string LastError();
}
