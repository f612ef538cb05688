namespace AimTrainer.Display.Tests;

public sealed class SoundDocsTests
{
    [Fact]
    public void Table_OfTheCues_IsAsTheyAre()
    {
        var clips = new CueClips();
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "docs", "sound.md"))
            .SkipWhile(line => line != "| cue | lasts | says |").Skip(2).TakeWhile(line => line.StartsWith('|'));

        Assert.Equal(CueScores.All.AsEnumerable().Select(score => $"| `{CueNames.Of(score.Cue)}` | {Milliseconds(score.Cue)} ms | {score.Meaning} |"), rows);

        int Milliseconds(Cue cue) => (int)clips.Length(new CuePlan([cue], null)).TotalMilliseconds;
    }

    [Fact]
    public void Find_NameOfEachCue_IsThatCue() => Assert.All(Enum.GetValues<Cue>(), cue => Assert.Equal(cue, CueNames.Find(CueNames.Of(cue))));
}
