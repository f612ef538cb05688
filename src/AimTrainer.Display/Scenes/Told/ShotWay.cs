using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>The places where a ball was seen, nearest first: the same that count as crossings when a shot is graded.</summary>
internal static class ShotWay
{
    public static ValueList<Crossing> Of(Shot shot)
    {
        var seen = new List<Crossing>(shot.Crossings);
        if (shot.Laydown is { } laydown)
        {
            seen.Add(new Crossing(default, laydown));
        }

        if (shot.Breakpoint is { Distance: { } distance } breakpoint)
        {
            seen.Add(new Crossing(distance, breakpoint.Board));
        }

        if (shot.Entry is { } entry)
        {
            seen.Add(new Crossing(LaneProfile.HeadPin, entry));
        }

        return seen.OrderBy(crossing => crossing.Distance).DistinctBy(crossing => crossing.Distance).ToValueList();
    }
}
