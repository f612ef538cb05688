using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>Makes what the windows show.</summary>
internal static class DisplayContents
{
    /// <summary>For <see cref="DisplayWindows"/>.</summary>
    /// <param name="maps">For projectors.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="clock">The time.</param>
    public static Func<DisplayWish, NewsSlot, IWindowContent> Of(DisplayMaps maps, Theme theme, TimeProvider clock) => (wish, news) => wish.Kind == DisplayKind.Projector
        ? new ProjectorContent(news, maps.For, theme, clock)
        : new OverheadContent(news, theme, clock);
}
