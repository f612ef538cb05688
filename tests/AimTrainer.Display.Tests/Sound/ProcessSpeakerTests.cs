using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Extensions.Time.Testing;

namespace AimTrainer.Display.Tests;

/// <summary>Speech through a script that writes down what it is asked to say, with its own process number, into a pipe.</summary>
public sealed class ProcessSpeakerTests : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-speech-").FullName;
    private readonly BlockingCollection<string> _notices = [];
    private readonly FakeTimeProvider _clock = new();
    private readonly StreamReader _said;

    public ProcessSpeakerTests()
    {
        var pipe = Path.Combine(_folder, "said");
        using (var make = Process.Start("mkfifo", [pipe]))
        {
            make.WaitForExit();
        }

        // Open both ways: neither side waits for the other, and the pipe has no end while nobody writes.
        _said = new StreamReader(new FileStream(pipe, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, 1));
    }

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync()
    {
        _said.Dispose();
        _notices.Dispose();
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task Say_Words_AreTheLastArgument()
    {
        await using var speaker = new ProcessSpeaker(Program("echo \"$1|$2|$#\" > \"$HERE/said\"", "-v"), _notices.Add, _clock);
        speaker.Say("1.5 left", TimeSpan.Zero);

        Assert.Equal("-v|1.5 left|2", await ReadAsync());
    }

    [Fact]
    public async Task Say_ProgramThatReads_WordsAreItsInput()
    {
        var program = Program("read -r words; echo \"$words|$#\" > \"$HERE/said\"") with { WordsOnInput = true };
        await using var speaker = new ProcessSpeaker(program, _notices.Add, _clock);
        speaker.Say("2 right", TimeSpan.Zero);

        Assert.Equal("2 right|0", await ReadAsync());
    }

    [Fact]
    public async Task Say_WhileAnotherIsSaid_TheOldOneIsKilled()
    {
        await using var speaker = new ProcessSpeaker(Program("echo \"$$ $1\" > \"$HERE/said\"; exec tail -f /dev/null > /dev/null 2>&1"), _notices.Add, _clock);
        speaker.Say("first", TimeSpan.Zero);
        var first = (await ReadAsync()).Split(' ');
        speaker.Say("second", TimeSpan.Zero);
        var second = (await ReadAsync()).Split(' ');

        Assert.Equal("first", first[1]);
        Assert.Equal("second", second[1]);
        await AssertEndsAsync(int.Parse(first[0]));
        await speaker.DisposeAsync();
        await AssertEndsAsync(int.Parse(second[0]));
        Assert.Empty(_notices);
    }

    [Fact]
    public async Task Hush_WhileSaid_IsKilled()
    {
        await using var speaker = new ProcessSpeaker(Program("echo \"$$\" > \"$HERE/said\"; exec tail -f /dev/null > /dev/null 2>&1"), _notices.Add, _clock);
        speaker.Say("first", TimeSpan.Zero);
        var process = int.Parse(await ReadAsync());
        speaker.Hush();

        await AssertEndsAsync(process);
    }

    [Fact]
    public async Task Say_AfterACue_WaitsForItAndANewerSayingTakesItsPlace()
    {
        await using var speaker = new ProcessSpeaker(Program("echo \"$1\" > \"$HERE/said\""), _notices.Add, _clock);
        speaker.Say("late", TimeSpan.FromSeconds(1));
        speaker.Say("newer", TimeSpan.Zero);

        // Had the first been said at all it would stand before this line.
        Assert.Equal("newer", await ReadAsync());
    }

    [Fact]
    public async Task Finish_LastSayingStillWaits_IsSaidToItsEnd()
    {
        await using var speaker = new ProcessSpeaker(Program("echo \"begun\" > \"$HERE/said\"; echo \"$1\" > \"$HERE/said\""), _notices.Add, _clock);
        speaker.Say("last", TimeSpan.FromSeconds(1));
        var finished = speaker.FinishAsync(Cancelled);
        while (!finished.IsCompleted)
        {
            _clock.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        await finished;
        Assert.Equal("begun", await ReadAsync());
        Assert.Equal("last", await ReadAsync());
    }

    [Fact]
    public async Task Say_ProgramMissing_SaidOnceThenSilent()
    {
        await using var speaker = new ProcessSpeaker(new SpeechProgram(Path.Combine(_folder, "nobody"), [], false), _notices.Add, _clock);
        speaker.Say("one", TimeSpan.Zero);
        Assert.True(_notices.TryTake(out var notice, (int)Patience.TotalMilliseconds, Cancelled));
        speaker.Say("two", TimeSpan.Zero);
        await speaker.DisposeAsync();

        Assert.Contains("nobody cannot be started", notice, StringComparison.Ordinal);
        Assert.Contains("install it, or leave --speak out", notice, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', notice);
        Assert.Empty(_notices);
    }

    [Fact]
    public async Task Say_ProgramFails_SaidOnce()
    {
        await using var speaker = new ProcessSpeaker(Program("exit 3"), _notices.Add, _clock);
        speaker.Say("one", TimeSpan.Zero);

        Assert.True(_notices.TryTake(out var notice, (int)Patience.TotalMilliseconds, Cancelled));
        Assert.Contains("it ended with code 3", notice, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_SearchPath_FirstProgramThatIsThere()
    {
        File.WriteAllText(Path.Combine(_folder, "spd-say"), "");

        Assert.Equal("spd-say", SpeechProgram.Find(SpeechProgram.Linux, $"/nowhere:{_folder}")!.File);
        File.WriteAllText(Path.Combine(_folder, "espeak-ng"), "");
        Assert.Equal("espeak-ng", SpeechProgram.Find(SpeechProgram.Linux, $"/nowhere:{_folder}")!.File);
        Assert.Null(SpeechProgram.Find(SpeechProgram.Linux, "/nowhere"));
        Assert.Null(SpeechProgram.Find(SpeechProgram.Linux, null));
    }

    private SpeechProgram Program(string script, params ReadOnlySpan<string> arguments)
    {
        var path = Path.Combine(_folder, "speak");
        File.WriteAllText(path, $"#!/bin/bash\nHERE='{_folder}'\n{script}\n");
        return new SpeechProgram("/bin/bash", [path, .. arguments], false);
    }

    private async Task<string> ReadAsync() => (await _said.ReadLineAsync(Cancelled).AsTask().WaitAsync(Patience, Cancelled))!;

    private static async Task AssertEndsAsync(int number)
    {
        try
        {
            using var process = Process.GetProcessById(number);
            await process.WaitForExitAsync(Cancelled).WaitAsync(Patience, Cancelled);
        }
        catch (ArgumentException)
        {
            // It has ended.
        }
    }
}
