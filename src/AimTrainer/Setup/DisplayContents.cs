using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>Makes what the windows show.</summary>
internal static class DisplayContents
{
    /// <summary>For <see cref="DisplayWindows"/>.</summary>
    /// <param name="maps">For projectors; each has its own.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="clock">The time.</param>
    public static Func<DisplayWish, NewsSlot, IWindowContent> Of(DisplayMaps maps, Theme theme, TimeProvider clock) => (wish, news) => wish.Kind == DisplayKind.Projector
        ? Projector(maps.Another(), news, theme, clock)
        : new OverheadContent(news, theme, clock);

    private static ProjectorContent Projector(DisplayMaps maps, NewsSlot news, Theme theme, TimeProvider clock) =>
        new(news, maps.For, theme, clock, new TargetFlags(maps.OthersDraw, maps.Say).Look);
}
