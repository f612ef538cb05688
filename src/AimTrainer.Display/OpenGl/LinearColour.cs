namespace AimTrainer.Display;

/// <summary>A colour in linear light, multiplied by its opacity; 1 is full.</summary>
internal readonly record struct LinearColour(float Red, float Green, float Blue, float Alpha)
{
    /// <summary>From sRGB. Source: IEC 61966-2-1.</summary>
    public static LinearColour Of(Colour colour)
    {
        var alpha = colour.Alpha / 255.0;
        return new((float)(Light(colour.Red) * alpha), (float)(Light(colour.Green) * alpha), (float)(Light(colour.Blue) * alpha), (float)alpha);
    }

    /// <summary>The light of one channel, 0 to 1.</summary>
    public static double Light(byte channel)
    {
        var value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
