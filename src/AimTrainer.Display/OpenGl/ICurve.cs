namespace AimTrainer.Display;

/// <summary>A piece of a curve in a plane, from 0 to 1.</summary>
internal interface ICurve
{
    XY At(double part);
}
