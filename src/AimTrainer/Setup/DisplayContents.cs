using AimTrainer.Display;

namespace AimTrainer.Setup;

/// <summary>Makes what the windows show.</summary>
internal static class DisplayContents
{
    public static Func<DisplayWish, NewsSlot, IWindowContent> Of(Theme theme, TimeProvider clock) => (wish, news) => wish.Kind == DisplayKind.Projector
        ? new ProjectorContent(news, DisplayMaps.For, theme, clock)
        : new OverheadContent(news, theme, clock);
}
