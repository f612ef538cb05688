using CsCheck;
using NAudio.Wave;

namespace AimTrainer.Display.Tests;

public sealed class CueMixerTests
{
    private static readonly CueClips Clips = new();
    private static readonly int FadeSamples = SoundFormat.Frames(CueMixer.Fade) * 2;

    private readonly CueMixer _mixer = new(Clips, Loudness.Full);

    [Fact]
    public void Read_NothingPlayed_IsSilent()
    {
        Assert.Equal(0, Spectrum.Peak(Read(1000)));
        Assert.True(_mixer.IsQuiet);
    }

    [Fact]
    public void Read_OnePlan_IsItsCuesWithARestBetween()
    {
        _mixer.Play(Plan(Cue.Hit, Cue.Narrower));

        float[] expected = [.. Clips.Of(Cue.Hit), .. new float[SoundFormat.Frames(CuePlan.Rest) * 2], .. Clips.Of(Cue.Narrower), .. new float[200]];
        Assert.False(_mixer.IsQuiet);
        Assert.Equal(expected, Read(expected.Length));
        Assert.True(_mixer.IsQuiet);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(14)]
    [InlineData(480)]
    [InlineData(4096)]
    public void Read_AnyBuffer_SameSamples(int buffer)
    {
        _mixer.Play(Plan(Cue.MissLeft, Cue.BlockEnd));
        var whole = new CueMixer(Clips, Loudness.Full);
        whole.Play(Plan(Cue.MissLeft, Cue.BlockEnd));

        var pieces = new float[buffer * (100_000 / buffer)];
        for (var i = 0; i < pieces.Length; i += buffer)
        {
            _mixer.Read(pieces.AsSpan(i, buffer));
        }

        var expected = new float[pieces.Length];
        whole.Read(expected);
        Assert.Equal(expected, pieces);
    }

    [Fact]
    public void Play_WhileAnotherSounds_OldFadesWithinFiveMillisecondsThenNewAlone()
    {
        _mixer.Play(Plan(Cue.MissRight));
        Read(6000);
        _mixer.Play(Plan(Cue.Hit));

        var heard = Read(FadeSamples + 8000);

        Assert.Equal(TimeSpan.FromMilliseconds(5), CueMixer.Fade);
        Assert.NotEqual(0, Spectrum.Peak(heard.AsSpan(0, FadeSamples)));
        Assert.Equal(0, heard[FadeSamples - 1]);
        for (var i = 0; i < FadeSamples; i++)
        {
            var share = 1 - (((i / 2) + 1) / (FadeSamples / 2.0));
            Assert.Equal(Clips.Of(Cue.MissRight)[6000 + i] * share, heard[i], 1e-6);
        }

        Assert.Equal(Clips.Of(Cue.Hit)[..8000], heard.AsSpan(FadeSamples));
    }

    [Fact]
    public void Play_SeveralWhileOneFades_OnlyTheNewestIsHeardAndTheFadeIsNotPutOff()
    {
        _mixer.Play(Plan(Cue.MissRight));
        Read(6000);
        _mixer.Play(Plan(Cue.Wider));
        Read(100);
        _mixer.Play(Plan(Cue.MissLeft));
        Read(100);
        _mixer.Play(Plan(Cue.Hit));

        var heard = Read(FadeSamples - 200 + 8000);

        Assert.Equal(Clips.Of(Cue.Hit)[..8000], heard.AsSpan(FadeSamples - 200));
    }

    [Fact]
    public void Play_InTheRestBetweenTwoCues_StartsAtOnce()
    {
        _mixer.Play(Plan(Cue.ToldHit, Cue.ToldHit));
        Read(Clips.Of(Cue.ToldHit).Length + 500);
        _mixer.Play(Plan(Cue.Hit));

        Assert.Equal(Clips.Of(Cue.Hit)[..2000], Read(2000));
    }

    [Fact]
    public void Play_PlanWithoutCues_ChangesNothing()
    {
        _mixer.Play(Plan(Cue.Hit));
        _mixer.Play(CuePlan.Nothing);

        Assert.Equal(Clips.Of(Cue.Hit)[..2000], Read(2000));
    }

    [Fact]
    public void Play_AnyCuesAtAnyMoment_NeverOverMinusOneDecibelAndNeverASuddenStep()
    {
        var cue = Gen.Enum<Cue>();
        var move = Gen.Select(cue.Array[0, 4], Gen.Int[1, 3000], Gen.Double[0, 100], Gen.Bool);
        move.Array[1, 12].Sample(moves =>
        {
            var mixer = new CueMixer(Clips, Loudness.Full);
            var heard = new List<float>();
            foreach (var (cues, frames, percent, muted) in moves)
            {
                mixer.Play(Plan(cues));
                (mixer.Volume, mixer.Muted) = (Loudness.FromPercent(percent), muted);
                var buffer = new float[frames * 2];
                mixer.Read(buffer);
                heard.AddRange(buffer);
            }

            // The steepest cue moves 0.17 a sample at full volume; a hard cut from a peak would be 0.7.
            var steepest = heard.Zip(heard.Skip(2), (now, next) => Math.Abs(next - now)).DefaultIfEmpty(0).Max();
            return Spectrum.DecibelsFullScale(heard.Max(Math.Abs)) <= -1 && steepest < 0.25;
        }, iter: 200);
    }

    [Fact]
    public void Volume_Half_TwelveDecibelsDown()
    {
        var mixer = new CueMixer(Clips, Loudness.FromPercent(50));
        mixer.Play(Plan(Cue.Hit));
        var heard = new float[Clips.Of(Cue.Hit).Length];
        mixer.Read(heard);

        Assert.Equal(-3 - 12.04, Spectrum.DecibelsFullScale(Spectrum.Peak(heard)), 0.02);
    }

    [Fact]
    public void Muted_WhileACueSounds_SilentWithinTheFadeAndTheCueGoesOn()
    {
        _mixer.Play(Plan(Cue.BlockEnd));
        Read(2000);
        _mixer.Muted = true;
        var muted = Read(4000);
        _mixer.Muted = false;
        Read(FadeSamples);

        Assert.NotEqual(0, muted[20]);
        Assert.Equal(0, Spectrum.Peak(muted.AsSpan(FadeSamples)));
        Assert.Equal(Clips.Of(Cue.BlockEnd).Slice(6000 + FadeSamples, 1000), Read(1000));
    }

    [Fact]
    public void Read_SteadyState_AllocatesNothing()
    {
        var samples = _mixer.ToWaveProvider16();
        var period = new byte[SoundFormat.Frames(SoundFormat.Period) * samples.WaveFormat.BlockAlign];
        var plan = Plan(Cue.HitBest, Cue.Narrower, Cue.BlockEnd);
        RunFor(100);

        // The least of three rounds: once in a while the runtime makes something of its own on this thread (compiling, pools).
        Assert.Equal(0, Enumerable.Range(0, 3).Select(_ => AllocatedBy(2000)).Min());

        long AllocatedBy(int periods)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            RunFor(periods);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        void RunFor(int periods)
        {
            for (var i = 0; i < periods; i++)
            {
                if (i % 37 == 0)
                {
                    _mixer.Play(plan);
                }

                samples.Read(period);
            }
        }
    }

    private static CuePlan Plan(params ReadOnlySpan<Cue> cues) => new(Domain.ValueList.Create(cues), null);

    private float[] Read(int count)
    {
        var buffer = new float[count];
        Assert.Equal(count, _mixer.Read(buffer));
        return buffer;
    }
}
