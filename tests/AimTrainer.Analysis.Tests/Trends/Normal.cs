using AimTrainer.Domain;

namespace AimTrainer.Analysis.Tests;

/// <summary>Seeded normal numbers, mean 0 and standard deviation 1.</summary>
internal sealed class Normal(ulong seed)
{
    private ulong _position;
    private double? _spare;

    public double Next()
    {
        if (_spare is { } spare)
        {
            _spare = null;
            return spare;
        }

        // Source: Box and Muller 1958, Annals of Mathematical Statistics 29:610-611.
        var radius = Math.Sqrt(-2 * Math.Log(1 - SeededRandom.Unit(seed, _position++)));
        var (sine, cosine) = Math.SinCos(2 * Math.PI * SeededRandom.Unit(seed, _position++));
        _spare = radius * sine;
        return radius * cosine;
    }
}
