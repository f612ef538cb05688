using System.Text.Json.Serialization;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Reports;

/// <summary>Where the misses at one line of a session came from.</summary>
/// <param name="Name">What the drill calls it.</param>
/// <param name="Causes">All shots.</param>
/// <param name="Splits">Each shot, held against the plan without gross misses where there are any.</param>
/// <param name="CausesWithoutGrossMisses">The same as the causes without the shots of gross misses; null when there is none.</param>
public sealed record LineFigures(string Name, SplitSet Causes, ValueList<ShotFigures> Splits, SplitSet? CausesWithoutGrossMisses)
{
    /// <summary>What advice is to be taken from: without gross misses.</summary>
    [JsonIgnore]
    public SplitSet Advice => CausesWithoutGrossMisses ?? Causes;

    /// <summary>The figures of a line.</summary>
    /// <param name="line">Its shots.</param>
    /// <param name="settings">Lane and noise.</param>
    /// <param name="words">For the sentences.</param>
    public static LineFigures Of(SessionLine line, AccuracySettings settings, MissWords words)
    {
        var study = line.Study(settings);
        var kind = study.Plan?.Kind ?? PlanKind.StraightThroughTargets;
        return new LineFigures(
            line.Name, study.Set!, line.Shots.Select(shot => ShotFigures.Of(shot.Number, shot.Shot, study.Split(shot.Shot), words, kind)).ToValueList(), study.WithoutGross);
    }
}
