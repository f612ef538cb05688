namespace AimTrainer.Domain;

/// <summary>Reads the aims of a block: targets, and lines of targets.</summary>
internal static class AimReader
{
    /// <summary>Every aim that can be made out; what is wrong is reported.</summary>
    /// <param name="file">The file.</param>
    /// <param name="block">The block.</param>
    /// <param name="sizing">The rule of targets that have none of their own; null when the block's own is wrong.</param>
    /// <param name="kind">The block's kind, when it is known.</param>
    public static IReadOnlyList<ReadAim> ReadAll(JsonFile file, ObjectReader block, Sizing? sizing, BlockKind? kind)
    {
        var names = new NameSet("target or line", "block");
        var targets = new TargetReader(file, sizing, kind, Walks(block), names);
        return [.. (block.Objects("aims", 1, 50, "targets and lines") ?? []).Select(aim => Read(aim, targets, names)).OfType<ReadAim>()];
    }

    private static ReadAim? Read(ObjectReader aim, TargetReader targets, NameSet names)
    {
        if (!aim.Has("line"))
        {
            return targets.Read(aim, isNearest: true) is { } single ? new ReadAim(new AimPlan(single.Plan.Name, [single.Plan]), [single]) : null;
        }

        names.Take(aim);
        var name = aim.Text("name", 80);
        var readers = aim.Objects("line", 2, 10, "targets");
        aim.Done();
        var line = (readers ?? []).Select((target, index) => targets.Read(target, index == 0)).ToList();
        CheckDistances(line);
        var read = line.OfType<ReadTarget>().ToList();
        return name is not null && read.Count > 0 ? new ReadAim(new AimPlan(name, read.Select(target => target.Plan).ToValueList()), read) : null;
    }

    private static void CheckDistances(List<ReadTarget?> line)
    {
        Feet? farthest = null;
        foreach (var target in line.OfType<ReadTarget>())
        {
            if (KnownDistance(target.Plan.Place) is not { } distance)
            {
                continue;
            }

            if (farthest is { } before && distance <= before)
            {
                target.Reader.Report(
                    target.Reader.Has("feet") ? "feet" : "patternExit",
                    $"{distance} ft after {before} ft",
                    "targets of a line at different distances, the nearest first");
            }

            farthest = farthest is { } other && other > distance ? other : distance;
        }
    }

    private static Feet? KnownDistance(TargetPlace place) => place switch
    {
        TargetPlace.AtBoard at => at.Distance,
        TargetPlace.AtPatternExit exit => exit.PatternLength,
        _ => null,
    };

    private static bool Walks(ObjectReader block) =>
        block.Node.Members.FirstOrDefault(member => member.Name == "order")?.Value.Members
            .Any(member => member is { Name: "kind", Value.Text: "walk" }) ?? false;
}
