using System.Numerics;

namespace AimTrainer.Display.Tests;

/// <summary>Measures sound, with methods of our own beside the code under test.</summary>
internal static class Spectrum
{
    /// <summary>The power of one frequency in a stretch of samples.</summary>
    /// <remarks>Source: Goertzel, "An algorithm for the evaluation of finite trigonometric series", American Mathematical Monthly 65, 1958.</remarks>
    public static double Power(ReadOnlySpan<float> samples, double hertz) => PowerOfWindowed(Windowed(samples), hertz);

    /// <summary>The strongest frequency from 200 to 2500 Hz, to 0.2 % of itself.</summary>
    public static double Strongest(ReadOnlySpan<float> samples)
    {
        var windowed = Windowed(samples);
        var (best, most) = (0.0, -1.0);
        for (var hertz = 200.0; hertz < 2500; hertz *= 1.002)
        {
            var power = PowerOfWindowed(windowed, hertz);
            (best, most) = power > most ? (hertz, power) : (best, most);
        }

        return best;
    }

    /// <summary>Power by frequency, bin k at k * rate / length, from a Hann window.</summary>
    /// <param name="samples">A power of two of them.</param>
    /// <remarks>Source: Cooley and Tukey, "An algorithm for the machine calculation of complex Fourier series", Mathematics of Computation 19, 1965.</remarks>
    public static double[] Powers(ReadOnlySpan<float> samples)
    {
        Complex[] values = [.. Windowed(samples).Select(value => new Complex(value, 0))];
        return [.. Transform(values).Take(samples.Length / 2).Select(value => value.Magnitude * value.Magnitude)];
    }

    /// <summary>One channel of samples that hold two by turns.</summary>
    public static float[] Channel(ReadOnlySpan<float> samples, int channel)
    {
        var one = new float[samples.Length / 2];
        for (var i = 0; i < one.Length; i++)
        {
            one[i] = samples[(2 * i) + channel];
        }

        return one;
    }

    public static double Energy(ReadOnlySpan<float> samples)
    {
        var sum = 0.0;
        foreach (var sample in samples)
        {
            sum += sample * (double)sample;
        }

        return sum;
    }

    public static double Peak(ReadOnlySpan<float> samples)
    {
        var peak = 0.0;
        foreach (var sample in samples)
        {
            peak = Math.Max(peak, Math.Abs(sample));
        }

        return peak;
    }

    /// <summary>The level of a value against the peak of the largest sine that fits.</summary>
    public static double DecibelsFullScale(double peak) => 20 * Math.Log10(peak);

    /// <summary>Samples under a Hann window.</summary>
    private static double[] Windowed(ReadOnlySpan<float> samples)
    {
        var windowed = new double[samples.Length];
        for (var i = 0; i < windowed.Length; i++)
        {
            windowed[i] = samples[i] * (0.5 - (0.5 * Math.Cos(Math.Tau * i / windowed.Length)));
        }

        return windowed;
    }

    private static Complex[] Transform(Complex[] values)
    {
        if (values.Length == 1)
        {
            return values;
        }

        var (evens, odds) = (new Complex[values.Length / 2], new Complex[values.Length / 2]);
        for (var i = 0; i < evens.Length; i++)
        {
            (evens[i], odds[i]) = (values[2 * i], values[(2 * i) + 1]);
        }

        var (even, odd) = (Transform(evens), Transform(odds));
        var result = new Complex[values.Length];
        for (var k = 0; k < even.Length; k++)
        {
            var turned = odd[k] * Complex.FromPolarCoordinates(1, -Math.Tau * k / values.Length);
            (result[k], result[k + even.Length]) = (even[k] + turned, even[k] - turned);
        }

        return result;
    }

    private static double PowerOfWindowed(double[] samples, double hertz)
    {
        var turn = Math.Tau * hertz / SoundFormat.Rate;
        var factor = 2 * Math.Cos(turn);
        var (one, two) = (0.0, 0.0);
        for (var i = 0; i < samples.Length; i++)
        {
            (one, two) = (samples[i] + (factor * one) - two, one);
        }

        return (one * one) + (two * two) - (factor * one * two);
    }
}
