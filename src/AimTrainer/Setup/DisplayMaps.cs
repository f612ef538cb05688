using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Output;

namespace AimTrainer.Setup;

/// <summary>Which map a projector's window is drawn by.</summary>
internal static class DisplayMaps
{
    private const double FarEndFeet = 62, NearEndFeet = -1;

    /// <summary>How much of the picture's height the lane's width takes up: wide enough to see a board by.</summary>
    private const double LaneWidthInHeights = 0.6;

    /// <summary>
    /// For looking at, not for a lane: the whole lane upright in the middle of the picture, the foul line below, wider than it is to scale.
    /// </summary>
    public static ProjectorMap Straight(PictureSize size)
    {
        const double LaneInches = 41.5;
        var across = LaneWidthInHeights * Math.Min(size.Height, size.Width) / LaneInches;
        var along = size.Height / ((FarEndFeet - NearEndFeet) * 12);
        return new ProjectorMap
        {
            Picture = size,
            Homography = new Homography(
                -across, 0, (size.Width + (LaneInches * across)) / 2,
                0, -along, size.Height + (NearEndFeet * 12 * along),
                0, 0, 1),
            Stretch = new LaneStretch(Feet.FromFeet(NearEndFeet), Feet.FromFeet(FarEndFeet), Feet.FromFeet(0), Feet.FromFeet(0)),
        };
    }

    /// <summary>A map that a user names.</summary>
    /// <returns>The map; null when none is named.</returns>
    /// <exception cref="UserException">It has mistakes, or cannot be drawn by: each is named.</exception>
    public static ProjectorMap? Read(string? file) => file is null ? null : throw new UserException($"{file}: not read yet");

    /// <summary>For a window: the straight map to look at it; on a monitor of its own only a map that was made for it.</summary>
    public static MapChoice For(WindowPlace place, PictureSize size) =>
        place.Borderless ? new MapChoice(null, null)
        : place.Missing is { } missing ? new MapChoice(null, $"Monitor {missing} is away, and this window has no map.")
        : new MapChoice(Straight(size), null);
}
