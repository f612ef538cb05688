using AimTrainer.Domain;

namespace AimTrainer.Sessions.Tests;

public sealed class PeopleTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-people-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(false, false, NameShown.Initials, "A. L.")]
    [InlineData(false, false, NameShown.GivenName, "Ann")]
    [InlineData(false, false, NameShown.FullName, "Ann Lee")]
    [InlineData(true, false, NameShown.GivenName, "A. L.")]
    [InlineData(true, true, NameShown.GivenName, "Ann")]
    [InlineData(true, true, NameShown.FullName, "Ann")]
    public void ScreenName_ByWhatWasAgreed_AndAMinorNeverByFullName(bool minor, bool guardian, NameShown shown, string name) =>
        Assert.Equal(name, ScreenName.Of("Ann Lee", new BowlerConsent
        {
            Bowler = "Ann Lee",
            IsMinor = minor,
            Guardian = guardian ? "Lou" : null,
            GuardianAgreedOn = guardian ? new DateOnly(2026, 1, 1) : null,
            Shown = shown,
        }));

    [Fact]
    public void ScreenName_NothingAgreed_IsInitials() => Assert.Equal("Ö. J. P.", ScreenName.Of(" österreich  jo-pat ", null));

    [Fact]
    public void People_SavedReadAgainAndRemoved_WhateverTheCase()
    {
        var people = new PeopleRegister(_folder);
        people.Save(new BowlerConsent { Bowler = "Ann Lee", Shown = NameShown.FullName });
        people.KeepFor(24);

        var again = new PeopleRegister(_folder);
        Assert.Equal("Ann Lee", again.Of("Ann Lee"));
        Assert.Equal("Ann Lee", again.Find("ann  LEE")!.Bowler);
        Assert.Equal(24, again.All.KeepMonths);
        again.Remove("ANN LEE");
        Assert.Equal("A. L.", new PeopleRegister(_folder).Of("Ann Lee"));
        Assert.DoesNotContain("Ann", File.ReadAllText(Path.Combine(_folder, "people.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void People_BrokenFile_ShowsInitialsAndSaysWhichFile()
    {
        File.WriteAllText(Path.Combine(_folder, "people.json"), "{ broken");
        var people = new PeopleRegister(_folder);

        Assert.Equal("A. L.", people.Of("Ann Lee"));
        Assert.Contains("people.json", Assert.Throws<StoreUnavailableException>(() => people.Find("Ann Lee")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_Lanes_AreFilledEvenlyAndNeverBeyondSix()
    {
        var group = new BowlerGroup
        {
            Id = "g",
            Name = "G",
            ProgramId = "p",
            Starts = default,
            Members = Enumerable.Range(1, 14).Select(number => new GroupMember($"B{number}", Hand.Right, "new", number == 1 ? 2 : null)).ToValueList(),
        };

        var lanes = group.OnLanes([1, 2]).Members.AsEnumerable().GroupBy(member => member.Station ?? 0).ToDictionary(lane => lane.Key, lane => lane.Count());

        Assert.Equal((6, 6, 2), (lanes[1], lanes[2], lanes[0]));
    }

    [Fact]
    public void Groups_IdsOfTheSameName_AreOneOfAKind_AndABowlerLeavesAll()
    {
        var groups = new GroupRegister(_folder);
        foreach (var name in (string[])["Tuesday class!", "Tuesday  class", "!!!"])
        {
            groups.Save(new BowlerGroup { Id = groups.NewId(name), Name = name, ProgramId = "p", Starts = default, Members = [new GroupMember("Ann Lee", Hand.Left, "new", null)] });
        }

        Assert.Equal(["group", "tuesday-class", "tuesday-class-2"], new GroupRegister(_folder).All.Select(group => group.Id).Order());
        groups.Remove("ann lee");
        Assert.All(new GroupRegister(_folder).All, group => Assert.Empty(group.Members));
    }

    [Fact]
    public void Lineups_KeptAndFoundAgain_AndABrokenFileIsNamed()
    {
        var files = new LineupFiles(_folder);
        var lineup = TurnRule.Apply(TurnRule.Empty(7, 2), new TurnChange.Join("s1", "Ann")).Lineup;
        files.Keep(lineup, durable: true);

        Assert.Equal(lineup, new LineupFiles(_folder).Find(7));
        Assert.Null(files.Find(8));
        File.WriteAllText(Path.Combine(_folder, "lanes", "lane-7.json"), "[");
        Assert.Contains("lane-7.json", Assert.Throws<StoreUnavailableException>(() => files.Find(7)).Message, StringComparison.Ordinal);
        files.Drop(7);
        Assert.Null(files.Find(7));
    }
}
