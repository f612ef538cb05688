using AimTrainer.Domain;

namespace AimTrainer.Web.Pages;

/// <summary>Where a drill's targets lie on the usual lane, for a drawing.</summary>
internal static class DrillTargets
{
    /// <summary>The targets of a block as they are first shown to a right-hander.</summary>
    /// <returns>The targets that can be placed, and what stands in the way of the others.</returns>
    public static (IReadOnlyList<Target> Targets, IReadOnlyList<string> Problems) Of(DrillBlock block)
    {
        var resolution = DrillResolver.Resolve(block, new DrillSetting(Hand.Right, LaneProfileReader.Default, null, null));
        var targets = new List<Target>();
        for (var i = 0; i < resolution.Aims.Count; i++)
        {
            for (var j = 0; j < resolution.Aims[i].Targets.Count; j++)
            {
                var plan = block.Aims[i].Targets[j];
                var placed = resolution.Aims[i].Targets[j];
                targets.Add(new Target(placed.Centre, plan.Sizing.Start(plan.Width).Width, placed.Distance));
            }
        }

        return (targets, [.. resolution.Problems]);
    }
}
