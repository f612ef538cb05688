using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// What is to be drawn, back to front. A scene for a projector is in lane coordinates (<see cref="LanePoint"/>), one for a screen in
/// <see cref="ScreenPoint"/>. Sizes are in the plane's unit: inches on the lane (both ways), picture heights on a screen.
/// </summary>
/// <typeparam name="TPoint">The plane.</typeparam>
/// <param name="Background">Fills the picture first.</param>
/// <param name="Shapes">The shapes, the last on top.</param>
public sealed record Scene<TPoint>(Colour Background, ValueList<Shape<TPoint>> Shapes)
    where TPoint : struct;
