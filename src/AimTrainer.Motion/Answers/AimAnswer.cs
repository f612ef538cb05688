using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>An advice for machines, as <c>docs/motion.md</c> describes it.</summary>
/// <param name="Source">Where the scatter is from.</param>
/// <param name="Window">The pocket window.</param>
/// <param name="Bowler">The bowler.</param>
/// <param name="ReachesWindow">Whether the best line reaches it in more than one throw of a hundred.</param>
/// <param name="Best">The best line.</param>
/// <param name="LaneFitted">Whether the lane's uncertainty is in it.</param>
/// <param name="Lanes">Over how many lanes.</param>
/// <param name="Halving">What halving each spread would add.</param>
/// <param name="Practise">The spread that is worth most; null when none stands out.</param>
/// <param name="Drill">The shipped drill that trains it.</param>
/// <param name="DrillFile">Where it was written with its target; null when nowhere.</param>
/// <param name="Seed">Seed of what was drawn.</param>
/// <param name="MapThrows">Throws a line of the map.</param>
/// <param name="Map">Every line of the grid.</param>
public sealed record AimAnswer(
    string Source,
    AimWindowAnswer Window,
    AimBowlerAnswer Bowler,
    bool ReachesWindow,
    AimBestAnswer Best,
    bool LaneFitted,
    int Lanes,
    ValueList<AimHalvingAnswer> Halving,
    ScatterPart? Practise,
    string Drill,
    string? DrillFile,
    ulong Seed,
    int MapThrows,
    ValueList<AimLineAnswer> Map)
{
    /// <summary>The document of an advice.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="bowler">The bowler.</param>
    /// <param name="source">Where the scatter is from.</param>
    /// <param name="settings">How it was worked out.</param>
    /// <param name="arrowsFeet">Where the arrows are.</param>
    /// <param name="laneFitted">Whether the lane's uncertainty is in it.</param>
    /// <param name="drillFile">Where the drill was written; null when nowhere.</param>
    public static AimAnswer Of(AimAdvice advice, AimBowler bowler, string source, AimSettings settings, double arrowsFeet, bool laneFitted, string? drillFile) => new(
        source,
        AimWindowAnswer.Of(settings.Window),
        AimBowlerAnswer.Of(bowler),
        advice.ReachesWindow,
        AimBestAnswer.Of(advice, settings, arrowsFeet),
        laneFitted,
        advice.Lanes,
        advice.Worths.Select(worth => new AimHalvingAnswer(worth.Part, PlainNumber.Of(worth.Chance), PlainNumber.Of(worth.Points), PlainNumber.Of(worth.ErrorPoints))).ToValueList(),
        advice.Practise,
        PractiseDrill.IdFor(advice.Practise),
        drillFile,
        settings.Seed,
        settings.MapThrows,
        advice.Map.AsEnumerable().Select(one => new AimLineAnswer(
            PlainNumber.Of(one.Line.LaydownBoard), PlainNumber.Of(one.Line.LaunchAngleDegrees), PlainNumber.Of(one.Chance), PlainNumber.Of(one.Error))).ToValueList());
}
