using System.Numerics;

namespace AimTrainer.Display.Tests;

/// <summary>Cues measured as they would be heard: from their samples, not from their notes.</summary>
public sealed class CueSynthTests
{
    private const double E4 = 329.63, F4 = 349.23, A4 = 440.00, B4 = 493.88, CSharp5 = 554.37, D5 = 587.33, E5 = 659.26;
    private const double A5 = 880.00, C6 = 1046.50, CSharp6 = 1108.73, D6 = 1174.66, E6 = 1318.51, A6 = 1760.00;

    private static readonly CueClips Clips = new();

    public static TheoryData<Cue> Cues() => new(Enum.GetValues<Cue>());

    // Source: the table of equal temperament at A4 = 440 Hz (ISO 16), to 0.01 Hz.
    public static TheoryData<Cue, double[]> Tunes() => new()
    {
        { Cue.HitBest, [A5, CSharp6, E6, A6] },
        { Cue.Hit, [A5, E6] },
        { Cue.HitJust, [A5] },
        { Cue.CloseLeft, [E4] },
        { Cue.CloseRight, [E5] },
        { Cue.MissLeft, [E4, E4] },
        { Cue.MissRight, [E5, E5] },
        { Cue.Missed, [A4, F4] },
        { Cue.Unmeasured, [B4, B4, B4] },
        { Cue.SetAside, [F4, B4, F4] },
        { Cue.ToldHit, [E6] },
        { Cue.ToldLeft, [E4] },
        { Cue.ToldRight, [E5] },
        { Cue.ToldMissed, [A4] },
        { Cue.ToldUnmeasured, [B4] },
        { Cue.Narrower, [C6, D6, E6] },
        { Cue.Wider, [E6, D6, C6] },
        { Cue.BlockEnd, [A4, D5, E5] },
        { Cue.SessionEnd, [E5, CSharp5, A4, A4] },
    };

    [Fact]
    public void Scores_All_InTheOrderOfTheCues() => Assert.Equal(Enum.GetValues<Cue>(), CueScores.All.AsEnumerable().Select(score => score.Cue));

    [Theory]
    [MemberData(nameof(Tunes))]
    public void Render_EachNote_HasItsPitchWithinOnePercent(Cue cue, double[] tune)
    {
        var score = CueScores.Of(cue);
        var loudest = Spectrum.Channel(Clips.Of(cue), score.Notes[0].Place == CuePlace.Right ? 1 : 0);
        var (note, rest) = (SoundFormat.Frames(score.Notes[0].Length), SoundFormat.Frames(score.Rest));

        Assert.Equal(tune.Length, score.Notes.Count);
        Assert.All(tune, (hertz, index) =>
        {
            var found = Spectrum.Strongest(loudest.AsSpan(index * (note + rest), note));
            Assert.InRange(found, hertz * 0.99, hertz * 1.01);
        });
    }

    [Theory]
    [MemberData(nameof(Cues))]
    public void Render_Peak_IsThreeDecibelsBelowFullScale(Cue cue) =>
        Assert.InRange(Spectrum.DecibelsFullScale(Spectrum.Peak(Clips.Of(cue))), -3.01, -2.99);

    [Theory]
    [MemberData(nameof(Cues))]
    public void Render_Ends_AreSilent(Cue cue)
    {
        var samples = Clips.Of(cue);

        Assert.Equal(0, samples[0]);
        Assert.Equal(0, samples[1]);
        Assert.Equal(0, samples[^2]);
        Assert.Equal(0, samples[^1]);
        Assert.InRange(Spectrum.Peak(samples[..6]), 0, 0.001);
        Assert.InRange(Spectrum.Peak(samples[^8..]), 0, 0.001);
    }

    [Theory]
    [MemberData(nameof(Cues))]
    public void Render_Mean_IsNone(Cue cue)
    {
        var mean = 0.0;
        foreach (var sample in Clips.Of(cue))
        {
            mean += sample;
        }

        Assert.InRange(mean / Clips.Of(cue).Length, -0.0005, 0.0005);
    }

    [Theory]
    [MemberData(nameof(Cues))]
    public void Render_AboveTenKilohertz_NothingThatClicksOrFolds(Cue cue)
    {
        // A click spreads over all frequencies; our highest harmonic is 5280 Hz. A mutant that starts its notes at once fails here.
        // The other channel is the same sound, louder or softer.
        var sound = Spectrum.Channel(Clips.Of(cue), 0);
        var samples = new float[BitOperations.RoundUpToPowerOf2((uint)sound.Length)];
        sound.CopyTo(samples, (samples.Length - sound.Length) / 2);
        var powers = Spectrum.Powers(samples);
        var high = powers[(int)(10_000L * samples.Length / SoundFormat.Rate)..].Sum();

        Assert.InRange(10 * Math.Log10(high / powers.Sum()), double.NegativeInfinity, -70);
    }

    [Theory]
    [InlineData(Cue.CloseLeft, true)]
    [InlineData(Cue.MissLeft, true)]
    [InlineData(Cue.ToldLeft, true)]
    [InlineData(Cue.CloseRight, false)]
    [InlineData(Cue.MissRight, false)]
    [InlineData(Cue.ToldRight, false)]
    public void Render_CueOfASide_ComesFromThatSideAndIsStillHeardOnTheOther(Cue cue, bool left)
    {
        var (near, far) = (Spectrum.Energy(Spectrum.Channel(Clips.Of(cue), left ? 0 : 1)), Spectrum.Energy(Spectrum.Channel(Clips.Of(cue), left ? 1 : 0)));

        Assert.InRange(10 * Math.Log10(near / far), 12, 16);
    }

    [Fact]
    public void Render_CuesWithoutASide_ComeFromBothAlike()
    {
        string[] sides = ["Left", "Right"];
        Assert.All(Enum.GetValues<Cue>().Where(cue => !sides.Any(side => cue.ToString().EndsWith(side, StringComparison.Ordinal))), cue =>
            Assert.Equal(Spectrum.Channel(Clips.Of(cue), 0), Spectrum.Channel(Clips.Of(cue), 1)));
    }

    [Fact]
    public void Render_LeftAndRight_AreAnOctaveApart()
    {
        // For one loudspeaker or one ear: the same note length, twice the frequency.
        var left = Spectrum.Strongest(Spectrum.Channel(Clips.Of(Cue.CloseLeft), 0));
        var right = Spectrum.Strongest(Spectrum.Channel(Clips.Of(Cue.CloseRight), 0));

        Assert.InRange(right / left, 1.98, 2.02);
    }

    [Fact]
    public void Render_AnyTwoCues_CanBeToldApart()
    {
        var heard = Enum.GetValues<Cue>().ToDictionary(cue => cue, Heard);

        var alike = from one in heard
                    from other in heard
                    where one.Key < other.Key && Likeness(one.Value, other.Value) >= 0.9
                    select $"{one.Key} and {other.Key}: {Likeness(one.Value, other.Value):0.000}";
        Assert.Empty(alike);
    }

    /// <summary>Power by 40 ms, by channel and by half tone from D4 to A6: the coarse picture that an ear has.</summary>
    private static double[] Heard(Cue cue)
    {
        const int Frames = SoundFormat.Rate / 25;
        const int Slots = 30;
        var picture = new List<double>();
        for (var channel = 0; channel < 2; channel++)
        {
            var sound = new float[Frames * Slots];
            Spectrum.Channel(Clips.Of(cue), channel).CopyTo(sound, 0);
            for (var slot = 0; slot < Slots; slot++)
            {
                for (var step = -7; step <= 24; step++)
                {
                    picture.Add(Math.Sqrt(Math.Max(0, Spectrum.Power(sound.AsSpan(slot * Frames, Frames), Pitch.FromA4(step).Hertz))));
                }
            }
        }

        return [.. picture];
    }

    /// <summary>1 for pictures that differ at most in loudness, 0 for those that share nothing.</summary>
    private static double Likeness(double[] one, double[] other) =>
        one.Zip(other, (a, b) => a * b).Sum() / Math.Sqrt(one.Sum(a => a * a) * other.Sum(b => b * b));
}
