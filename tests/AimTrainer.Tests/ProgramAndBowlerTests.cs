using System.IO.Compression;

namespace AimTrainer.Tests;

public sealed class ProgramAndBowlerTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Program_ListShowCheck_OfTheShippedOnes()
    {
        var ids = _work.Run("program", "list", "--json").Json().EnumerateArray().Select(one => one.GetProperty("id").GetString()!).ToList();

        Assert.Equal(6, ids.Count);
        foreach (var id in ids)
        {
            Assert.Equal(id, _work.Run("program", "show", id, "--json").Json().GetProperty("id").GetString());
            Assert.Contains("Week 1: ", _work.Run("program", "show", id).Out, StringComparison.Ordinal);
            var check = _work.Run("program", "check", Path.Combine(AppContext.BaseDirectory, "drills", "programs", $"{id}.json"));
            Assert.Equal(0, check.Code);
            Assert.Contains(": good (", check.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Program_WithAMistake_IsNamedWithLineAndPath_AndANearName()
    {
        var bad = _work.File("bad.json", "{ \"format\": 1, \"id\": \"own\",\n \"weeks\": [] }");

        var check = _work.Run("program", "check", bad);
        var near = _work.Run("program", "show", "junior");

        Assert.Equal((2, 2), (check.Code, near.Code));
        Assert.Contains("bad.json:2: $.weeks: found", check.Out, StringComparison.Ordinal);
        Assert.Contains("did you mean juniors?", near.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Bowler_ExportedAndErased_IsGone_AndStaysGoneAfterARestore()
    {
        var shots = _work.File("shots.csv", "time,boardAt15\n" + string.Concat(Enumerable.Range(0, 10).Select(i => $"2026-03-02T18:0{i}:00Z,10\n")));
        Assert.Equal(0, _work.Run("run", "--bowler", "Xanthippe Lee", "--drill", "ten-shot-spread", "--shots", shots).Code);
        var (zip, backup) = (Path.Combine(_work.Folder, "hers.zip"), Path.Combine(_work.Folder, "old.db"));
        Assert.Equal(0, _work.Run("backup", backup).Code);

        Assert.Equal(0, _work.Run("bowler", "export", "xanthippe lee", "--out", zip).Code);
        using (var archive = ZipFile.OpenRead(zip))
        {
            Assert.Contains(archive.Entries, entry => entry.FullName.EndsWith("/shots.csv", StringComparison.Ordinal));
        }

        var unsure = _work.Run("bowler", "erase", "Xanthippe Lee");
        Assert.Equal(2, unsure.Code);
        Assert.Contains("--sure", unsure.Error, StringComparison.Ordinal);
        var erased = _work.Run("bowler", "erase", "Xanthippe Lee", "--sure", "xanthippe lee");
        Assert.Equal(0, erased.Code);
        Assert.Contains("Erased for good: 1 session", erased.Out, StringComparison.Ordinal);
        Assert.Contains("no session is stored here yet", _work.Run("sessions", "list").Out, StringComparison.Ordinal);
        Assert.Equal(2, _work.Run("bowler", "erase", "Xanthippe Lee", "--sure", "Xanthippe Lee").Code);

        var restored = _work.Run("restore", backup);
        Assert.Contains("1 session of it had been erased since and were erased again", restored.Out, StringComparison.Ordinal);
        Assert.Contains("no session is stored here yet", _work.Run("sessions", "list").Out, StringComparison.Ordinal);
    }
}
