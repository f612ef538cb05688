namespace AimTrainer.Display;

/// <summary>A colour in sRGB with straight (not premultiplied) opacity; 255 is opaque.</summary>
public readonly record struct Colour(byte Red, byte Green, byte Blue, byte Alpha = 255);
