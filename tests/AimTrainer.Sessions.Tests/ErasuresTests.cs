using System.Text;

namespace AimTrainer.Sessions.Tests;

/// <summary>The one list of what was erased: it outlives kills, and nothing in it is passed over in silence.</summary>
public sealed class ErasuresTests : IDisposable
{
    private const string One = """{"kind":"erased","id":"e1","at":"2026-03-07T19:30:00+00:00","sessions":["s1","s2"]}""" + "\n";
    private const string Two = """{"kind":"erased","id":"e2","at":"2026-03-08T19:30:00+00:00","sessions":["s3"]}""" + "\n";

    private static readonly DateTimeOffset At = new(2026, 3, 7, 19, 30, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-erasures-").FullName;

    private string FilePath => Path.Combine(_folder, "erasures.jsonl");

    [Fact]
    public void All_NoFile_IsEmpty() => Assert.Empty(new Erasures(_folder).All());

    [Fact]
    public void All_WhatWasNoted_IsThereAsItStands()
    {
        var list = new Erasures(_folder);
        list.Add("e1", At, ["s1", "s2"]);
        list.Add("e2", At.AddDays(1), ["s3"]);
        list.Add("e3", At.AddDays(2), []);
        list.Finished("e1", At.AddMinutes(1));
        list.ChainTold("e1", At.AddHours(1));
        list.Finished("e3", At.AddDays(3));

        Assert.Equal(
            [
                new Erasure("e1", At, ["s1", "s2"]) { FinishedAt = At.AddMinutes(1), ChainToldAt = At.AddHours(1) },
                new Erasure("e2", At.AddDays(1), ["s3"]),
                new Erasure("e3", At.AddDays(2), []) { FinishedAt = At.AddDays(3) },
            ],
            new Erasures(_folder).All());
        Assert.StartsWith(One, File.ReadAllText(FilePath), StringComparison.Ordinal);
    }

    [Fact]
    public void All_LastLineTornAtAnyByte_IsLeftOutAndWrittenOver()
    {
        for (var length = 1; length < Two.Length; length++)
        {
            File.WriteAllText(FilePath, One + Two[..length]);
            var list = new Erasures(_folder);
            Assert.Equal(["e1"], list.All().Select(erasure => erasure.Id));

            list.Add("e3", At, ["s4"]);
            Assert.Equal(["e1", "e3"], list.All().Select(erasure => erasure.Id));
        }
    }

    [Fact]
    public void All_LastLineOfWhichTheDiskWroteOnlyTheEnd_IsLeftOutAndWrittenOver()
    {
        File.WriteAllText(FilePath, One + new string('\0', 40) + Two[40..]);
        var list = new Erasures(_folder);
        Assert.Equal(["e1"], list.All().Select(erasure => erasure.Id));

        list.Finished("e1", At);
        Assert.NotNull(Assert.Single(list.All()).FinishedAt);
    }

    [Fact]
    public void All_OnlyATornLine_IsEmpty()
    {
        File.WriteAllText(FilePath, One[..20]);
        Assert.Empty(new Erasures(_folder).All());
    }

    [Theory]
    [InlineData("""{"kind":"erased","id":"e2","at":"2026-03""", "$.at")]
    [InlineData("", "$:")]
    [InlineData("null", "$.kind")]
    [InlineData("[]", "$:")]
    [InlineData("""{"id":"e2","at":"2026-03-08T19:30:00Z","sessions":[]}""", "$.kind: found none")]
    [InlineData("""{"kind":"other","id":"e2","at":"2026-03-08T19:30:00Z"}""", "$.kind")]
    [InlineData("""{"kind":"erased","at":"2026-03-08T19:30:00Z","sessions":[]}""", "$.id: found none")]
    [InlineData("""{"kind":"erased","id":"e2","sessions":[]}""", "$.at: found none")]
    [InlineData("""{"kind":"erased","id":"e2","at":"2026-03-08T19:30:00Z"}""", "$.sessions: found none")]
    [InlineData("""{"kind":"erased","id":"e2","at":"2026-03-08T19:30:00Z","sessions":["s1",""]}""", "$.sessions: found an empty id")]
    [InlineData("""{"kind":"erased","id":"e2","at":"2026-03-08T19:30:00Z","sessions":["s1"],"name":"x"}""", "$.name")]
    [InlineData("""{"kind":"erased","id":"e1","at":"2026-03-08T19:30:00Z","sessions":["s1"]}""", "\"e1\" a second time")]
    [InlineData("""{"kind":"chainTold","id":"e9","at":"2026-03-08T19:30:00Z"}""", "\"e9\", which no line before it names")]
    public void All_BrokenLineInTheMiddle_NamesFileAndLine(string line, string words)
    {
        File.WriteAllText(FilePath, One + line + "\n" + Two.Replace("e2", "e3", StringComparison.Ordinal));

        var told = Assert.Throws<StoreUnavailableException>(() => new Erasures(_folder).All()).Message;

        Assert.StartsWith($"{FilePath}:2: ", told, StringComparison.Ordinal);
        Assert.Contains(words, told, StringComparison.Ordinal);
        Assert.Contains("Mend that line", told, StringComparison.Ordinal);
    }

    [Fact]
    public void All_BrokenLineAtTheEndThatIsNotTorn_IsNoLessAnError()
    {
        File.WriteAllText(FilePath, One + "e2\n");
        Assert.StartsWith($"{FilePath}:2: ", Assert.Throws<StoreUnavailableException>(() => new Erasures(_folder).All()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_EveryByteOfALineChanged_IsAnErrorOrAnotherErasure_NeverOneLess()
    {
        var good = Encoding.UTF8.GetBytes(One + Two);
        for (var at = 0; at < One.Length - 1; at++)
        {
            var bytes = (byte[])good.Clone();
            bytes[at] ^= 0x10;
            File.WriteAllBytes(FilePath, bytes);
            try
            {
                Assert.Equal(2, new Erasures(_folder).All().Count);
            }
            catch (StoreUnavailableException exception)
            {
                Assert.StartsWith($"{FilePath}:", exception.Message, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Add_ListCannotBeWritten_SaysSo()
    {
        Directory.CreateDirectory(FilePath);
        var told = Assert.Throws<StoreUnavailableException>(() => new Erasures(_folder).Add("e1", At, ["s1"])).Message;
        Assert.Contains("erasures.jsonl: cannot be written", told, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
