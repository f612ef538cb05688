namespace AimTrainer.Calibration;

/// <summary>A monitor and how it is driven. A map holds for one of these only: in another mode the same place of the lane is another pixel.</summary>
/// <param name="Monitor">The name that the system gives the monitor.</param>
/// <param name="Size">Its picture.</param>
/// <param name="RefreshHertz">Pictures a second, as a whole number.</param>
public sealed record MonitorMode(string Monitor, PictureSize Size, int RefreshHertz)
{
    /// <summary>In words.</summary>
    public override string ToString() => FormattableString.Invariant($"{Monitor} at {Size.Width} x {Size.Height}, {RefreshHertz} Hz");
}
