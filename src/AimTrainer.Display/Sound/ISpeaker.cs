namespace AimTrainer.Display;

/// <summary>A voice. Neither call waits for anything.</summary>
public interface ISpeaker : IAsyncDisposable
{
    /// <summary>Says words in place of whatever is said or waits.</summary>
    /// <param name="words">The words.</param>
    /// <param name="after">How long to wait first, so that the voice does not speak over a cue.</param>
    void Say(string words, TimeSpan after);

    /// <summary>Ends whatever is said or waits: it is late.</summary>
    void Hush();
}
