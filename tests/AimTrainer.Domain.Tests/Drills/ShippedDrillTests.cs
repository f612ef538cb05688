namespace AimTrainer.Domain.Tests;

/// <summary>Every file of the drills folder, so that people add drills without code and hear at once when one is wrong.</summary>
public sealed class ShippedDrillTests(DrillSchema schema) : IClassFixture<DrillSchema>
{
    public static IEnumerable<TheoryDataRow<string>> Names() => TestFiles.ShippedDrills().Select(name => new TheoryDataRow<string>(name));

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_ShippedDrill_HasNoProblem(string name) => Assert.Empty(Read(name).Problems);

    [Theory]
    [MemberData(nameof(Names))]
    public void Schema_ShippedDrill_IsValid(string name) => Assert.Empty(schema.Errors(File.ReadAllBytes(TestFiles.Drill(name))));

    [Theory]
    [MemberData(nameof(Names))]
    public void Id_ShippedDrill_IsTheFilesName(string name) => Assert.Equal(name, Read(name).Value!.Id);

    [Theory]
    [MemberData(nameof(Names))]
    public void Docs_ShippedDrill_ListItWithItsPurpose(string name)
    {
        var drill = Read(name).Value!;

        Assert.Contains($"| `{drill.Id}` | {drill.Name} | {drill.Purpose} | {drill.WhoFor} | {drill.AboutMinutes} |", Docs(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Cautions_ShippedDrill_KeepPeopleBehindTheFoulLine(string name) =>
        Assert.Contains(Read(name).Value!.Cautions, caution => caution.Contains("Nobody walks past the foul line", StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void Resolve_ShippedDrill_FindsEveryPlaceForEitherHand(string name)
    {
        foreach (var hand in Enum.GetValues<Hand>())
        {
            var setting = new DrillSetting(hand, LaneProfileReader.Default, null, Feet.FromFeet(41));
            Assert.All(Read(name).Value!.Blocks, block => Assert.Empty(DrillResolver.Resolve(block, setting).Problems));
        }
    }

    [Fact]
    public void Names_ShippedDrills_AreOneOfAKind()
    {
        var drills = TestFiles.ShippedDrills().Select(name => Read(name).Value!).ToList();

        Assert.InRange(drills.Count, 16, int.MaxValue);
        Assert.Equal(drills.Count, drills.Select(drill => drill.Id).Distinct().Count());
        Assert.Equal(drills.Count, drills.Select(drill => drill.Name).Distinct().Count());
    }

    [Fact]
    public void Features_ShippedDrills_CoverThemAll()
    {
        var blocks = TestFiles.ShippedDrills().SelectMany(name => Read(name).Value!.Blocks).ToList();
        var targets = blocks.SelectMany(block => block.Aims).SelectMany(aim => aim.Targets).ToList();

        AssertCovers<Order>(blocks.Select(block => block.Order));
        AssertCovers<WalkWhen>(blocks.Select(block => block.Order).OfType<Order.Walk>().Select(walk => walk.When));
        AssertCovers<FeedbackWhen>(blocks.Select(block => block.Feedback.When));
        AssertCovers<TargetPlace>(targets.Select(target => target.Place));
        AssertCovers<Sizing>(targets.Select(target => target.Sizing));
        AssertCovers<StaircaseStep>(targets.Select(target => target.Sizing).OfType<StaircaseSizing>().Select(sizing => sizing.Step));
        Assert.Equal(Enum.GetValues<WalkEnd>(), blocks.Select(block => block.Order).OfType<Order.Walk>().Select(walk => walk.AtEnd).Distinct().Order());
        Assert.Equal(Enum.GetValues<FeedbackSays>(), blocks.Select(block => block.Feedback.Says).Distinct().Order());
        Assert.Equal(Enum.GetValues<BlockKind>(), blocks.Select(block => block.Kind).Distinct().Order());
        Assert.Equal(Enum.GetValues<MarkerKind>(), targets.Select(target => target.Place).OfType<TargetPlace.AtMark>().Select(place => place.Kind).Distinct().Order());
        Assert.Contains(blocks, block => block.Until.HitsInARow is not null);
        Assert.Contains(blocks, block => block.Until.WidthReached is not null);
        Assert.Contains(blocks, block => block.Until is { Minutes: not null, Shots: null });
        Assert.Contains(blocks, block => block.Until == new BlockEnd());
        Assert.Contains(blocks, block => block.Comparable is { LeftOutOfSizing: true, SpeedWithin: not null, RevsWithin: not null, LaunchAngleWithin: not null, LaydownWithin: not null });
        Assert.Contains(blocks, block => block.Comparable?.Given is { Speed: not null, Revs: not null, LaunchAngle: not null, Laydown: not null });
        Assert.Contains(blocks, block => block.Bands != GradeBands.Default);
        Assert.Contains(blocks, block => block.ShowsNext);
        Assert.Contains(blocks, block => block.Order is Order.ByChance { Seed: null });
        Assert.Contains(blocks, block => block.Order is Order.ByChance { Seed: not null });
        Assert.Contains(targets, target => target.Width is null);
        Assert.Contains(targets, target => target.WalkRatio != 1);
        Assert.Contains(TestFiles.ShippedDrills(), name => Read(name).Value!.AsksHowArmFeels);
    }

    private static void AssertCovers<T>(IEnumerable<T> used)
    {
        var all = typeof(T).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(T)) && !type.IsAbstract);
        Assert.Equal(all.Select(type => type.Name).Order(), used.Select(item => item!.GetType().Name).Distinct().Order());
    }

    private static FileRead<DrillScript> Read(string name) => DrillReader.Read(name, File.ReadAllBytes(TestFiles.Drill(name)));

    private static string Docs() => File.ReadAllText(TestFiles.Doc("drills.md"));
}
