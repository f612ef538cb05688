namespace AimTrainer.Display;

/// <summary>A pitch of equal temperament: twelve equal steps to the octave, from A4 = 440 Hz.</summary>
/// <remarks>Source of the tuning: ISO 16, "Acoustics: standard tuning frequency" (A = 440 Hz).</remarks>
public readonly record struct Pitch
{
    /// <summary>Lowest and highest step: 55 Hz to 3520 Hz.</summary>
    public const int Lowest = -36, Highest = 36;

    private const double ConcertPitch = 440;

    private Pitch(int steps) => Steps = steps;

    /// <summary>Half-tone steps from A4, negative below it.</summary>
    public int Steps { get; }

    /// <summary>Its frequency in cycles a second.</summary>
    public double Hertz => ConcertPitch * Math.Pow(2, Steps / 12.0);

    /// <summary>A pitch by its distance from A4.</summary>
    /// <param name="steps">Half tones, <see cref="Lowest"/> to <see cref="Highest"/> inclusive.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static Pitch FromA4(int steps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, Lowest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(steps, Highest);
        return new Pitch(steps);
    }
}
