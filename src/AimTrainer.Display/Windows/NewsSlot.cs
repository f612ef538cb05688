namespace AimTrainer.Display;

/// <summary>Holds the newest news of one station for its displays; what was not looked at is replaced. Safe from many threads.</summary>
/// <param name="first">What is shown until something comes.</param>
/// <param name="wake">Called after each change, on the thread that brought it.</param>
public sealed class NewsSlot(DisplayNews first, Action wake)
{
    private volatile DisplayNews _newest = first;

    /// <summary>The newest.</summary>
    public DisplayNews Newest => _newest;

    /// <summary>Puts news in the place of the old.</summary>
    public void Put(DisplayNews news)
    {
        _newest = news;
        wake();
    }
}
