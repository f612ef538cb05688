namespace AimTrainer.Display;

/// <summary>A voice. To ask it to speak waits for nothing.</summary>
public interface ISpeaker : IAsyncDisposable
{
    /// <summary>Says words in place of whatever is said or waits.</summary>
    /// <param name="words">The words.</param>
    /// <param name="after">How long to wait first, so that the voice does not speak over a cue.</param>
    void Say(string words, TimeSpan after);

    /// <summary>Ends whatever is said or waits: it is late.</summary>
    void Hush();

    /// <summary>Waits until what was asked for last has been said. Nothing more can be asked for.</summary>
    Task FinishAsync(CancellationToken cancellationToken);
}
