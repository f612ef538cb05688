namespace AimTrainer.Domain;

/// <summary>Grades a shot against exactly what was shown. Pure: no clock, no state.</summary>
public static class Grader
{
    /// <summary>Grades one target.</summary>
    public static TargetResult Grade(Shot shot, NamedTarget shown, GradeBands bands)
    {
        var crossing = Crossings.At(shot, shown.Target.Distance);
        if (crossing.Board is not { } board)
        {
            return new TargetResult(shown.Name, shown.Target, crossing, null, null);
        }

        var miss = board - shown.Target.Centre;
        return new TargetResult(shown.Name, shown.Target, crossing, miss, bands.GradeOf(miss, shown.Target.Width));
    }

    /// <summary>Grades every target of an aim, in its order.</summary>
    public static ValueList<TargetResult> Grade(Shot shot, Aim shown, GradeBands bands)
    {
        if (!shown.IsLine)
        {
            return [Grade(shot, shown.Targets[0], bands)];
        }

        var results = new TargetResult[shown.Targets.Count];
        for (var i = 0; i < results.Length; i++)
        {
            results[i] = Grade(shot, shown.Targets[i], bands);
        }

        return ValueList.Create<TargetResult>(results);
    }

    /// <summary>
    /// Whether the aim was held: no when any target was missed, yes when every one was held, null when that hangs on a
    /// crossing nobody measured.
    /// </summary>
    public static bool? Held(ValueList<TargetResult> results)
    {
        var allKnown = true;
        foreach (var result in results)
        {
            if (result.Grade is not { } grade)
            {
                allKnown = false;
            }
            else if (!grade.Holds)
            {
                return false;
            }
        }

        return allKnown ? true : null;
    }

    /// <summary>The points of all targets that were graded.</summary>
    public static int Points(ValueList<TargetResult> results)
    {
        var points = 0;
        foreach (var result in results)
        {
            points += result.Grade?.Points ?? 0;
        }

        return points;
    }
}
