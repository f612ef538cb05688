namespace AimTrainer.Display.Tests;

public sealed class PitchTests
{
    // Source: ISO 16, A4 = 440 Hz; the other notes from the usual table of equal temperament, to 0.01 Hz (textbooks of acoustics).
    [Theory]
    [InlineData(-36, 55.00)]
    [InlineData(-9, 261.63)]
    [InlineData(-5, 329.63)]
    [InlineData(-4, 349.23)]
    [InlineData(0, 440.00)]
    [InlineData(2, 493.88)]
    [InlineData(7, 659.26)]
    [InlineData(12, 880.00)]
    [InlineData(15, 1046.50)]
    [InlineData(19, 1318.51)]
    [InlineData(36, 3520.00)]
    public void Hertz_StepsFromA4_AsInTheTable(int steps, double hertz) => Assert.Equal(hertz, Pitch.FromA4(steps).Hertz, 0.005);

    [Theory]
    [InlineData(-37)]
    [InlineData(37)]
    public void FromA4_OutsideTheRange_Throws(int steps) => Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.FromA4(steps));
}
