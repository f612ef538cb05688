using System.Text;

namespace AimTrainer.Tests;

/// <summary>The sound command, and a session that is heard.</summary>
public sealed class SoundTests : IDisposable
{
    private const string Drill = """
        { "format": 1, "id": "heard", "name": "Heard", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 1, "blocks": [
          { "name": "one", "kind": "training", "aims": [{ "name": "spot", "board": 10, "feet": 15, "widthBoards": 4 }],
            "order": { "kind": "serial" }, "until": { "shots": 2 } } ] }
        """;

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Sound_List_EveryCueAndTheDevices()
    {
        var ran = _work.Run("sound");

        Assert.Equal(0, ran.Code);
        Assert.Contains("miss-left          390 ms  missed on the left", ran.Out, StringComparison.Ordinal);
        Assert.Contains("  default  the usual device of this machine", ran.Out, StringComparison.Ordinal);
        Assert.Contains("  wav:FILE  a WAV file", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Sound_Json_CuesDevicesAndProblem()
    {
        var json = _work.Run("sound", "--json").Json();

        Assert.Equal(19, json.GetProperty("cues").GetArrayLength());
        Assert.Equal("hit-best", json.GetProperty("cues")[0].GetProperty("name").GetString());
        Assert.Equal(435, json.GetProperty("cues")[0].GetProperty("milliseconds").GetInt32());
        Assert.True(json.TryGetProperty("devices", out _) && json.TryGetProperty("problem", out _));
    }

    [Fact]
    public void Sound_Out_AFileForEachCue()
    {
        var folder = Path.Combine(_work.Folder, "cues");
        var ran = _work.Run("sound", "--out", folder);

        Assert.Equal(0, ran.Code);
        Assert.Equal(19, Directory.GetFiles(folder, "*.wav").Length);
        Assert.Equal(19, ran.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);

        // 390 ms, 48000 frames a second, 4 bytes a frame, and one silent frame at the end. Source: the frame rate of DVD and broadcast sound, 48 kHz (AES5).
        Assert.Equal(4 * ((48 * 390) + 1), Samples(Path.Combine(folder, "06-miss-left.wav")).Length * 2);
    }

    [Fact]
    public void Sound_PlayIntoAFile_HoldsTheCue()
    {
        var (folder, path) = (Path.Combine(_work.Folder, "cues"), Path.Combine(_work.Folder, "heard.wav"));
        _work.Run("sound", "--out", folder);
        var ran = _work.Run("sound", "--play", "told-left", "--sound", $"wav:{path}", "--volume", "100");

        Assert.Equal(0, ran.Code);
        Assert.Equal("told-left: in a row of shots: missed on the left\n", ran.Out.ReplaceLineEndings("\n"));
        Assert.True(Holds(path, Path.Combine(folder, "12-told-left.wav")));
    }

    [Theory]
    [InlineData(2, "--play hot", "--play: found hot; allowed: all, hit-best, hit,")]
    [InlineData(2, "--json --play all", "--json lists cues and devices: leave --play and --out out")]
    [InlineData(2, "--play all --sound off", "--sound off plays nothing: name a device")]
    [InlineData(2, "--volume 101", "--volume: found 101; allowed: 0 to 100")]
    [InlineData(2, "--out /dev/null/x", "/dev/null/x: the cues cannot be written there")]
    [InlineData(1, "--play hit --sound no-such-device", "sound device no-such-device: not there: plug one in, or name one of those that \"aimtrainer sound\" lists")]
    public void Sound_WhatCannotBeDone_OneLine(int code, string line, string words)
    {
        var ran = _work.Run(["sound", .. line.Split(' ')]);

        Assert.Equal(code, ran.Code);
        Assert.StartsWith(words, ran.Error, StringComparison.Ordinal);
        Assert.Equal(ran.Error.Length - 1, ran.Error.IndexOf('\n', StringComparison.Ordinal));
    }

    [Fact]
    public void Run_SoundIntoAFile_LastCueIsHeardToItsEnd()
    {
        var (folder, path) = (Path.Combine(_work.Folder, "cues"), Path.Combine(_work.Folder, "heard.wav"));
        _work.Run("sound", "--out", folder);
        var ran = _work.Typed("16\n10\n", "run", "--drill", _work.File("heard.json", Drill), "--sound", $"wav:{path}", "--volume", "100");

        Assert.Equal(0, ran.Code);
        Assert.True(Holds(path, Path.Combine(folder, "19-session-end.wav")));
    }

    [Fact]
    public async Task Play_UsualDevice_IsTheOneThatTheSystemNames()
    {
        // The whole way through the system's own library: its "file" device in the place of a card.
        var (folder, path) = (Path.Combine(_work.Folder, "cues"), Path.Combine(_work.Folder, "heard.wav"));
        _work.Run("sound", "--out", folder);
        _work.File(".asoundrc", $$"""
            pcm.!default { type file slave.pcm "null" file "{{path}}" format "wav" }
            """);
        var ran = await _work.ShellAsync("HOME=$PWD $AIM sound --play hit --volume 100");

        Assert.Equal("", ran.Error);
        Assert.Equal(0, ran.Code);
        Assert.True(Holds(path, Path.Combine(folder, "02-hit.wav")));
    }

    [Fact]
    public async Task Run_SpeaksThroughTheProgramOfTheSystem_LastWordsToo()
    {
        var program = _work.File("espeak-ng", "#!/bin/bash\necho \"$*\" >> \"$OUT\"\n");
        var said = Path.Combine(_work.Folder, "said");
        var ran = await _work.ShellAsync(
            $"chmod +x '{program}'; export OUT='{said}' PATH=\"$PWD:$PATH\"; "
            + $"printf '16\\n9.5\\n' | $AIM run --drill '{_work.File("heard.json", Drill)}' --data \"$DATA\" --sound off --speak");

        Assert.Equal(0, ran.Code);
        Assert.Equal("-v en 0.5 right", File.ReadAllLines(said)[^1]);
    }

    [Fact]
    public async Task Run_NoSpeechProgram_SaidOnceAndTheSessionGoesOn()
    {
        var ran = await _work.ShellAsync(
            "DOTNET=$(command -v dotnet); mkdir none; "
            + $"printf '16\\n9.5\\n' | PATH=\"$PWD/none\" \"$DOTNET\" ${{AIM#dotnet }} run --drill '{_work.File("heard.json", Drill)}' --data \"$DATA\" --speak");

        Assert.Equal(0, ran.Code);
        Assert.Equal(2, ran.Out.Split("--speak: no speech program found; install one (espeak-ng or spd-say)").Length);
        Assert.Contains("Session over", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Sound_Help_SaysWhatItDoes() => Assert.Contains("List the cues", _work.Run("sound", "--help").Out, StringComparison.Ordinal);

    [Fact]
    public void Run_DeviceThatIsNotThere_SaidOnceAndTheSessionGoesOn()
    {
        var ran = _work.Typed("16\n10\n", "run", "--drill", _work.File("heard.json", Drill), "--sound", "no-such-device");

        Assert.Equal(0, ran.Code);
        Assert.Equal(2, ran.Out.Split("no sound: sound device no-such-device: not there").Length);
        Assert.Contains("the session goes on silent", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Session over", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_SoundOff_NothingIsSaidOfIt()
    {
        var ran = _work.Typed("16\n10\n", "run", "--drill", _work.File("heard.json", Drill), "--sound", "off");

        Assert.Equal(0, ran.Code);
        Assert.DoesNotContain("sound", ran.Out, StringComparison.Ordinal);
    }

    /// <summary>Whether a file holds all samples of another, one after another.</summary>
    private static bool Holds(string path, string cue) => Samples(path).AsSpan().IndexOf(Samples(cue)) >= 0;

    /// <summary>The 16-bit samples of a WAV file: the chunk "data". Source: RIFF WAVE, "Multimedia programming interface and data specifications 1.0", 1991.</summary>
    private static short[] Samples(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var data = bytes.AsSpan().IndexOf("data"u8);
        Assert.Equal("RIFF", Encoding.ASCII.GetString(bytes, 0, 4));
        var samples = new short[BitConverter.ToInt32(bytes, data + 4) / 2];
        Buffer.BlockCopy(bytes, data + 8, samples, 0, samples.Length * 2);
        return samples;
    }
}
