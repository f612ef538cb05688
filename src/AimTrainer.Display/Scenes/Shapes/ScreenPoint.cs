namespace AimTrainer.Display;

/// <summary>A place on a screen in picture heights: the origin is the top left corner, so (aspect, 1) is the bottom right one.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Down.</param>
public readonly record struct ScreenPoint(double X, double Y);
