namespace AimTrainer.Display;

/// <summary>An open sound device of ALSA, as far as a player needs it. Numbers below 0 are error numbers of the system, negated.</summary>
public interface IPcm : IDisposable
{
    /// <summary>Its name.</summary>
    string Device { get; }

    /// <summary>Gives frames to the device; waits while its buffer is full.</summary>
    /// <param name="frames">Whole frames of <see cref="SoundFormat.Shorts"/>.</param>
    /// <returns>How many frames were taken, or an error.</returns>
    int Write(ReadOnlySpan<byte> frames);

    /// <summary>Makes the device ready again after an error that can be mended: it ran dry, or the machine had slept.</summary>
    /// <returns>0, or the error when it cannot be mended.</returns>
    int Recover(int error);

    /// <summary>Waits until all that was given is heard.</summary>
    void Drain();
}
