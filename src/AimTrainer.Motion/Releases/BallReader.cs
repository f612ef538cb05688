using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Reads a ball from JSON. The format is told in <c>docs/motion.md</c>.</summary>
public static class BallReader
{
    /// <summary>Reads a ball, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<Ball> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var ball = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Part(reader) : null;
        return new FileRead<Ball>(file.HasProblems ? null : ball, file.Problems);
    }

    /// <summary>Reads a ball that is part of a larger document.</summary>
    /// <param name="ball">The object; its problems go to its file.</param>
    /// <returns>The ball, or null after reporting what is wrong.</returns>
    public static Ball? Part(ObjectReader ball)
    {
        ball.OptionalText("name", 80);
        var mass = ball.ExactlyOne("massKg", "massLb") switch
        {
            "massKg" => ball.Number("massKg", Ball.LightestKilograms, Ball.HeaviestKilograms),
            "massLb" => ball.Number("massLb", 5.6, 16.5) * Ball.KilogramsPerPound,
            _ => null,
        };
        var radius = ball.ExactlyOne("radiusM", "diameterIn") switch
        {
            "radiusM" => ball.Number("radiusM", Ball.SmallestRadiusMetres, Ball.LargestRadiusMetres),
            "diameterIn" => ball.Number("diameterIn", 7.9, 9.05) / 2 * Ball.MetresPerInch,
            _ => null,
        };
        var gyration = ball.Number("radiusOfGyrationIn", Ball.LeastGyrationInches, Ball.MostGyrationInches);
        var grip = ball.OptionalNumber("grip", Ball.LeastGrip, Ball.MostGrip) ?? 1;
        ball.Done();
        return mass is { } kilograms && radius is { } metres && gyration is { } inches
            ? new Ball { MassKilograms = kilograms, RadiusMetres = metres, RadiusOfGyrationMetres = inches * Ball.MetresPerInch, Grip = grip }
            : null;
    }
}
