using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Several projectors along one lane: who draws what, and where two of them share it.</summary>
public static class JoinedStretches
{
    /// <summary>
    /// The stretches with their overlaps set, so that at every distance between the first and the last the shares of light add up to 1.
    /// </summary>
    /// <param name="stretches">Where each starts and ends, in any order; their overlaps are worked out anew.</param>
    /// <returns>The same in the same order with overlaps; or in words why they cannot be joined.</returns>
    public static StretchJoin Of(IReadOnlyList<LaneStretch> stretches)
    {
        var order = Enumerable.Range(0, stretches.Count).OrderBy(i => stretches[i].From).ThenBy(i => stretches[i].To).ToList();
        var (joined, problems) = (stretches.Select(stretch => stretch with { NearOverlap = default, FarOverlap = default }).ToArray(), new List<string>());
        foreach (var stretch in stretches.Where(stretch => stretch.To <= stretch.From))
        {
            problems.Add($"the stretch {stretch.From} to {stretch.To} ft has no length: let it end farther down the lane than it starts");
        }

        for (var k = 1; k < order.Count; k++)
        {
            var (near, far) = (joined[order[k - 1]], joined[order[k]]);
            var shared = near.To.Value - far.From.Value;
            if (far.To <= near.To || far.From <= near.From)
            {
                problems.Add($"the stretch {near.From} to {near.To} ft and the stretch {far.From} to {far.To} ft lie one within the other: let each draw a part of its own");
            }
            else if (shared < 0)
            {
                problems.Add($"nobody draws the lane from {near.To} to {far.From} ft: make a stretch longer until the two overlap");
            }
            else if (k > 1 && joined[order[k - 2]].To > far.From)
            {
                problems.Add($"three projectors share the lane from {far.From} to {joined[order[k - 2]].To} ft: at most two may");
            }
            else
            {
                joined[order[k - 1]] = near with { FarOverlap = Feet.FromFeet(shared) };
                joined[order[k]] = far with { NearOverlap = Feet.FromFeet(shared) };
            }
        }

        return problems.Count > 0 ? new StretchJoin([], problems.ToValueList()) : new StretchJoin(joined.ToValueList(), []);
    }
}
