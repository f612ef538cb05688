using AimTrainer.Calibration;

namespace AimTrainer.Display;

/// <summary>What one window shows. All calls come on the thread of the <see cref="DisplayLoop"/>.</summary>
public interface IWindowContent : IDisposable
{
    /// <summary>Draws it; disposed of with the window, while its context is current.</summary>
    IFramePainter Painter { get; }

    /// <summary>Takes over what is new. Asked at every wake-up; allocates nothing when nothing is.</summary>
    /// <param name="size">The window's size now.</param>
    /// <returns>Whether the picture must be drawn again; a new size is no reason of its own.</returns>
    bool Refresh(PictureSize size);

    /// <summary>How long until the picture changes by itself; null when it waits for news.</summary>
    TimeSpan? ChangesIn { get; }

    /// <summary>The window was put somewhere: at first, and when its monitor went or came back.</summary>
    void Placed(WindowPlace place);

    /// <summary>A key was pressed in the window.</summary>
    /// <returns>False to close the window.</returns>
    bool Press(KeyPress press);
}
