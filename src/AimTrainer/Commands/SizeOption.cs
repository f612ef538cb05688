using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Calibration;

namespace AimTrainer.Commands;

/// <summary>The size of pictures that are written.</summary>
internal static class SizeOption
{
    // 8K; more than any display shows, and what drivers without a graphics card still draw.
    private const int WidestPixels = 7680, HighestPixels = 4320;

    public static Option<PictureSize> Create() => new("--size")
    {
        Description = $"Size of the pictures; up to {WidestPixels}x{HighestPixels}.",
        HelpName = "WIDTHxHEIGHT",
        DefaultValueFactory = _ => new PictureSize(1920, 1080),
        CustomParser = ParseSize,
    };

    private static PictureSize ParseSize(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (text.Split('x') is [var left, var right]
            && int.TryParse(left, NumberStyles.None, CultureInfo.InvariantCulture, out var width) && width is >= 1 and <= WidestPixels
            && int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out var height) && height is >= 1 and <= HighestPixels)
        {
            return new PictureSize(width, height);
        }

        result.AddError($"--size: found {text}; allowed: 1x1 to {WidestPixels}x{HighestPixels}, as 1920x1080");
        return new PictureSize(1, 1);
    }
}
