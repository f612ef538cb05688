namespace AimTrainer.Calibration;

/// <summary>A monitor and how it is driven. A map holds for one of these only: in another mode the same place of the lane is another pixel.</summary>
/// <param name="Monitor">The name that the system gives the monitor.</param>
/// <param name="Size">Its picture.</param>
/// <param name="RefreshHertz">Pictures a second, as a whole number; 0 where the system does not say.</param>
public sealed record MonitorMode(string Monitor, PictureSize Size, int RefreshHertz)
{
    /// <summary>In words.</summary>
    public override string ToString() => RefreshHertz > 0
        ? FormattableString.Invariant($"{Monitor} at {Size.Width} x {Size.Height}, {RefreshHertz} Hz")
        : FormattableString.Invariant($"{Monitor} at {Size.Width} x {Size.Height}");
}
