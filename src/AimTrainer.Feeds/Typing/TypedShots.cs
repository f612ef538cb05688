using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>
/// Reads shots typed by a person: <c>10.5</c>, <c>10.5/7</c>, <c>?/7 @17.2 #late</c>. See <c>docs/shots.md</c>, "Typing".
/// </summary>
public static class TypedShots
{
    private const string PlacesAllowed = "a board such as 10.5, boards such as 10.5/7, or ? for one that nobody saw";

    /// <summary>Reads one line.</summary>
    /// <param name="line">What was typed.</param>
    /// <param name="shown">What is aimed at, or null when nothing is shown.</param>
    /// <param name="lane">Where the arrows and downlane marks lie.</param>
    public static TypedLine Parse(string line, Aim? shown, LaneProfile lane)
    {
        var text = line.Trim();
        if (text.Length == 0)
        {
            return new TypedLine.Empty();
        }

        if (char.IsLetter(text[0]) || text[0] == ':')
        {
            return new TypedLine.Command(text);
        }

        var reading = new ShotReading { Source = ShotSource.Typed };
        if (text.IndexOf('#', StringComparison.Ordinal) is >= 0 and var sign)
        {
            reading.Note = text[(sign + 1)..];
            text = text[..sign].TrimEnd();
        }

        if (text.IndexOf('@', StringComparison.Ordinal) is >= 0 and var at)
        {
            if (Number(text[(at + 1)..]) is not { } speed)
            {
                return new TypedLine.Wrong(FoundText.Quoted(text[(at + 1)..].Trim()) + " after @", "a speed in mph such as @17.2");
            }

            reading.SpeedMilesPerHour = speed;
            text = text[..at].TrimEnd();
        }

        return Places(text, shown, lane, reading) ?? Checked(reading);
    }

    private static TypedLine.Wrong? Places(string text, Aim? shown, LaneProfile lane, ShotReading reading)
    {
        var places = text.Split('/');
        var distances = Distances(shown, lane);
        if (places.Length > distances.Count)
        {
            return distances.Count == 1
                ? new TypedLine.Wrong("two boards, and this lane has no downlane mark for the second", "one board")
                : new TypedLine.Wrong(
                    string.Create(CultureInfo.InvariantCulture, $"{places.Length} boards"),
                    string.Create(CultureInfo.InvariantCulture, $"at most {distances.Count}: at {string.Join(", ", distances.Select(feet => $"{feet} ft"))}"));
        }

        // One board alone is at what is shown, even when a second could only be given with the arrows before it.
        var first = places.Length == 1 && shown is not null ? shown.Targets[0].Target.Distance : distances[0];
        for (var i = 0; i < places.Length; i++)
        {
            var place = places[i].Trim();
            if (place == "?")
            {
                continue;
            }

            if (Number(place) is not { } board)
            {
                return new TypedLine.Wrong(FoundText.Quoted(place), PlacesAllowed);
            }

            reading.AddCrossing((i == 0 ? first : distances[i]).Value, board);
        }

        return null;
    }

    /// <summary>
    /// Where several boards lie: at the targets of a line. With one target beyond the arrows: at the arrows and at the target; with
    /// one nearer, or none: at the target (the arrows) and at the lane's nearest downlane mark.
    /// </summary>
    private static List<Feet> Distances(Aim? shown, LaneProfile lane)
    {
        if (shown is { IsLine: true })
        {
            return [.. shown.Targets.Select(target => target.Target.Distance)];
        }

        var target = shown?.Targets[0].Target.Distance;
        if (target is { } far && far > lane.ArrowsDistance)
        {
            return [lane.ArrowsDistance, far];
        }

        var near = target ?? lane.ArrowsDistance;
        var marks = lane.Markers.AsEnumerable().Where(marker => marker.Kind == MarkerKind.Downlane && marker.Distance > near).ToList();
        return marks.Count == 0 ? [near] : [near, marks.Min(marker => marker.Distance)];
    }

    private static TypedLine Checked(ShotReading reading) => reading.Check(out var problems) is { } shot
        ? new TypedLine.Throw(shot)
        : new TypedLine.Wrong(
            string.Join("; ", problems.Select(problem => $"{problem.Field} {problem.Found}")),
            string.Join("; ", problems.Select(problem => problem.Allowed)));

    /// <summary>A plain number; a comma is a decimal sign when one or two digits follow it and no point is there.</summary>
    private static double? Number(string text)
    {
        var number = text.Trim();
        var comma = number.IndexOf(',', StringComparison.Ordinal);
        if (comma >= 0 && comma < number.Length - 1 && number.Length - comma <= 3 && !number.Contains('.', StringComparison.Ordinal))
        {
            number = number.Replace(',', '.');
        }

        return double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value : null;
    }
}
