using AimTrainer.Domain;

namespace AimTrainer.Display.Tests;

/// <summary>No scene dazzles: how much light a scene gives as a whole.</summary>
public sealed class SceneLightTests
{
    private static readonly Colour White = new(255, 255, 255);
    private static readonly Colour Black = new(0, 0, 0);

    public static TheoryData<string> States() => new(SceneStates.All().Select(state => state.Name));

    [Theory]
    [MemberData(nameof(States))]
    public void Mean_ProjectorOfAnyStateAndTheme_IsBounded(string name)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        foreach (var theme in ThemeLibrary.Own)
        {
            var scene = ProjectorScene.Build(state.Projector with { Theme = theme });
            Assert.Equal(Black, scene.Background);
            Assert.InRange(SceneLight.Mean(scene, LaneProfileReader.Default), 0.0001, SceneLight.MostOnLane);
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Mean_ScreenOfAnyStateInADarkTheme_IsMostlyDark(string name)
    {
        var state = SceneStates.All().Single(each => each.Name == name);
        foreach (var theme in ThemeLibrary.Own.AsEnumerable().Where(theme => theme.Id != "daylight"))
        {
            Assert.InRange(SceneLight.Mean(OverheadScene.Build(state.Overhead with { Theme = theme }), 16.0 / 9), 0.001, 0.16);
        }
    }

    [Fact]
    public void Mean_NoticeOfAnyTheme_IsDark()
    {
        foreach (var theme in ThemeLibrary.Own)
        {
            Assert.InRange(SceneLight.Mean(NoticeScene.Uncalibrated(16.0 / 9, theme), 16.0 / 9), 0.001, 0.1);
        }
    }

    [Fact]
    public void Mean_KnownShapes_IsTheirShareOfThePicture()
    {
        Assert.Equal(0, Mean(Black));
        Assert.Equal(1, Mean(White), 12);
        Assert.Equal(0.25, Mean(Black, new Shape<ScreenPoint>.Polygon([new(0, 0), new(1, 0), new(1, 0.5), new(0, 0.5)], White)), 12);
        Assert.Equal(Math.PI * 0.02 / 2, Mean(Black, new Shape<ScreenPoint>.Ellipse(new(1, 0.5), 0.2, 0.1, White)), 12);
        Assert.Equal(Math.PI * 0.03 / 2, Mean(Black, new Shape<ScreenPoint>.Ellipse(new(1, 0.5), 0.2, 0.2, White, 0.1)), 12);
        Assert.Equal((0.1 + (Math.PI * 0.0025)) / 2, Mean(Black, new Shape<ScreenPoint>.Stroke([new(0, 0.5), new(1, 0.5)], 0.1, White)), 12);
        Assert.Equal(0.25 * 51 / 255, Mean(Black, new Shape<ScreenPoint>.Polygon([new(0, 0), new(1, 0), new(1, 0.5), new(0, 0.5)], White with { Alpha = 51 })), 12);
    }

    [Fact]
    public void Mean_WholeLaneWhite_IsOne()
    {
        var lane = LaneProfileReader.Default;
        LanePoint At(double inches, double feet) => new(Inches.FromInches(inches), Feet.FromFeet(feet));
        var scene = new Scene<LanePoint>(Black, [new Shape<LanePoint>.Polygon([At(0, 0), At(41.5, 0), At(41.5, 60), At(0, 60)], White)]);
        Assert.Equal(1, SceneLight.Mean(scene, lane), 12);
    }

    private static double Mean(Colour ground, params Shape<ScreenPoint>[] shapes) => SceneLight.Mean(new Scene<ScreenPoint>(ground, shapes.ToValueList()), 2);
}
