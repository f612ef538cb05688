namespace AimTrainer.Display;

/// <summary>Holds why the displays of a window are dark, if they are. Safe from many threads.</summary>
/// <param name="wake">Called after each change, on the thread that brought it.</param>
public sealed class Darkness(Action wake)
{
    private volatile DarkReason? _reason;

    /// <summary>Why; null when they are not.</summary>
    public DarkReason? Reason => _reason;

    /// <summary>Makes them dark, or lets them show again.</summary>
    /// <param name="reason">Why; null to show again.</param>
    public void Set(DarkReason? reason)
    {
        if (reason != _reason)
        {
            _reason = reason;
            wake();
        }
    }
}
