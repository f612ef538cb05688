namespace AimTrainer.Motion;

/// <summary>Numbers of the motion model for JSON: plain, at most nine decimals; null where something did not happen.</summary>
internal static class PlainNumber
{
    public static decimal? Of(double value) => double.IsFinite(value) ? Math.Round((decimal)value, 9) : null;
}
