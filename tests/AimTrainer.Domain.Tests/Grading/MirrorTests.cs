using CsCheck;

namespace AimTrainer.Domain.Tests;

/// <summary>Nothing may favour one hand: the same throw in a mirror gives the same answer in the mirror.</summary>
public sealed class MirrorTests
{
    /// <summary>Places where a ball was seen on the lane: feet and ten-thousandths of a board from the right edge, ties of rounding among them.</summary>
    private static readonly Gen<(int Tenths, int FromRight)[]> AnyPath =
        Gen.Select(Gen.Int[1, 599], Gen.Int[-40_000, 440_000], (tenths, board) => (tenths, board)).Array[0, 6]
            .Select(path => path.DistinctBy(seen => seen.tenths).ToArray());

    private static readonly Gen<(int Centre, int Width, int Tenths)> AnyTarget =
        Gen.Select(Gen.Int[5, 395], Gen.Int[50, 2000], Gen.Int[0, 600], (centre, width, tenths) => (centre, width, tenths));

    private static readonly Gen<LaneProfile> AnyLane =
        Gen.Double[41, 42].Select(inches => SampleLane.Usual with { Width = Inches.FromInches(inches) });

    [Fact]
    public void Grade_LaneInAMirror_IsTheSameForTheOtherHand() =>
        Gen.Select(AnyLane, AnyPath, AnyTarget, Gen.Int[-40_000, 440_000]).Sample((lane, path, at, laydown) =>
        {
            var mirrored = SampleLane.Mirrored(lane);
            var target = TargetAt(at);
            var rightShot = ShotSeen(lane, PointsOf(lane, path), PointOf(lane, 0, laydown), Hand.Right);
            var leftShot = ShotSeen(
                mirrored, [.. PointsOf(lane, path).Select(point => InMirror(lane, point))], InMirror(lane, PointOf(lane, 0, laydown)), Hand.Left);

            Assert.Equal(Grader.Grade(rightShot, target, GradeBands.Default), Grader.Grade(leftShot, target, GradeBands.Default));
            Assert.Equal(LaunchAngles.Of(rightShot, lane), LaunchAngles.Of(leftShot, mirrored));

            var drawnRight = lane.PointOf(target.Target.Centre, target.Target.Distance, Hand.Right);
            var drawnLeft = mirrored.PointOf(target.Target.Centre, target.Target.Distance, Hand.Left);
            Assert.Equal(InMirror(lane, drawnRight).Across.Value, drawnLeft.Across.Value, 9);
        }, iter: 1_000);

    [Fact]
    public void Grade_SamePlacesCountedFromTheOtherEdge_IsTheMissToTheOtherSide() =>
        Gen.Select(AnyLane, AnyPath, AnyTarget, Gen.Int[-40_000, 440_000]).Sample((lane, path, at, laydown) =>
        {
            var target = TargetAt(at);
            var other = target with { Target = new Target(target.Target.Centre.Mirrored(), target.Target.Width, target.Target.Distance) };
            var points = PointsOf(lane, path);
            var start = PointOf(lane, 0, laydown);
            var rightShot = ShotSeen(lane, points, start, Hand.Right);
            var leftShot = ShotSeen(lane, points, start, Hand.Left);
            var right = Grader.Grade(rightShot, target, GradeBands.Default);
            var left = Grader.Grade(leftShot, other, GradeBands.Default);

            Assert.Equal(right.Grade, left.Grade);
            Assert.Equal(right.Miss, left.Miss is { } miss ? -miss : null);
            Assert.Equal(right.Crossing.Kind, left.Crossing.Kind);
            Assert.Equal(right.Crossing.Board, left.Crossing.Board?.Mirrored());
            Assert.Equal(LaunchAngles.Of(rightShot, lane)?.Angle.Value ?? 0, -(LaunchAngles.Of(leftShot, lane)?.Angle.Value ?? 0));
        }, iter: 1_000);

    [Fact]
    public void Grade_CrossingsInAnyOrder_IsTheSame() =>
        Gen.Select(AnyPath, AnyTarget, Gen.Int[0, 1_000_000]).Sample((path, at, order) =>
        {
            var crossings = path.Select(seen => (seen.Tenths / 10.0, seen.FromRight / 10_000.0)).ToArray();
            // Any fixed scramble that depends on the number drawn.
            var scrambled = crossings.OrderBy(crossing => (crossing.Item1 * 7919 * (order + 1)) % 1009).ToArray();
            var (one, other) = (SampleShot.Of(crossings), SampleShot.Of(scrambled));
            Assert.Equal(one, other);
            Assert.Equal(Grader.Grade(one, TargetAt(at), GradeBands.Default), Grader.Grade(other, TargetAt(at), GradeBands.Default));
        }, iter: 1_000);

    private static NamedTarget TargetAt((int Centre, int Width, int Tenths) at) =>
        new("target", new Target(Board.FromBoards(at.Centre / 10.0), BoardOffset.FromBoards(at.Width / 100.0), Feet.FromFeet(at.Tenths / 10.0)));

    private static LanePoint PointOf(LaneProfile lane, int tenths, int fromRight) =>
        lane.PointOf(Board.FromBoards(fromRight / 10_000.0), Feet.FromFeet(tenths / 10.0), Hand.Right);

    private static LanePoint[] PointsOf(LaneProfile lane, (int Tenths, int FromRight)[] path) =>
        [.. path.Select(seen => PointOf(lane, seen.Tenths, seen.FromRight))];

    private static LanePoint InMirror(LaneProfile lane, LanePoint point) =>
        point with { Across = Inches.FromInches(lane.Width.Value - point.Across.Value) };

    private static Shot ShotSeen(LaneProfile lane, LanePoint[] points, LanePoint laydown, Hand hand) =>
        SampleShot.Of(
            [.. points.Select(point => (point.Down.Value, lane.BoardOf(point, hand).Boards))],
            reading => reading.LaydownBoard = lane.BoardOf(laydown, hand).Boards);
}
