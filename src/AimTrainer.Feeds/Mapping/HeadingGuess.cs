using System.Globalization;
using System.Text;
using AimTrainer.Domain;

namespace AimTrainer.Feeds;

/// <summary>Guesses what a heading means from its words; the words are those of the trade, not of any program.</summary>
internal static class HeadingGuess
{
    private const double FeetPerMetre = 1 / 0.3048;

    /// <summary>The meaning of a heading, or null.</summary>
    public static MappedColumn? Of(string heading)
    {
        if (ShotColumns.TryFind(heading, out var ours, out var distance) && distance <= 60)
        {
            return new MappedColumn(heading, ours, Feet: distance);
        }

        var words = Words(heading);
        var unit = Unit(heading, words);
        if (Measure(words) is { } measure)
        {
            var allowed = MappedUnits.AllowedFor(measure);
            var fits = unit is { } known && allowed.Contains(MappedUnits.NameOf(known));
            return new MappedColumn(heading, measure, fits ? unit!.Value : MappedUnit.Ours, SpeedAt: measure == ShotColumn.SpeedMph ? SpeedAt(words) : null);
        }

        if (Place(words) is { } place)
        {
            return new MappedColumn(heading, place, PlaceUnit(unit, words));
        }

        if (DistanceIn(words) is { } feet && (words.Contains("board") || words.Contains("position") || words.Contains("pos")))
        {
            // The unit in such a heading is that of the distance.
            return new MappedColumn(heading, ShotColumn.BoardAt, words.Contains("board") ? MappedUnit.Board : MappedUnit.Ours, feet);
        }

        return Plain(words) is { } plain ? new MappedColumn(heading, plain) : null;
    }

    private static ShotColumn? Measure(List<string> words)
    {
        bool Has(params ReadOnlySpan<string> any)
        {
            foreach (var word in any)
            {
                if (words.Contains(word))
                {
                    return true;
                }
            }

            return false;
        }

        return true switch
        {
            _ when Has("speed", "velocity") => ShotColumn.SpeedMph,
            _ when Has("rpm", "revs", "rev", "revolutions") => ShotColumn.RevsRpm,
            _ when Has("tilt") => ShotColumn.AxisTiltDeg,
            _ when Has("rotation") => ShotColumn.AxisRotationDeg,
            _ when Has("angle") && Has("launch", "release") => ShotColumn.LaunchAngleDeg,
            _ when Has("angle") && Has("entry", "impact") => ShotColumn.EntryAngleDeg,
            _ when Has("breakpoint") && Has("distance", "length", "feet") => ShotColumn.BreakpointFeet,
            _ => null,
        };
    }

    private static ShotColumn? Place(List<string> words) => true switch
    {
        _ when words.Contains("angle") => null,
        _ when words.Contains("laydown") => ShotColumn.LaydownBoard,
        _ when words.Contains("arrow") || words.Contains("arrows") => ShotColumn.ArrowsBoard,
        _ when words.Contains("breakpoint") => ShotColumn.BreakpointBoard,
        _ when words.Contains("entry") || words.Contains("impact") => ShotColumn.EntryBoard,
        _ => null,
    };

    private static ShotColumn? Plain(List<string> words) => true switch
    {
        _ when words.Contains("time") || words.Contains("timestamp") || words.Contains("date") || words.Contains("when") => ShotColumn.Time,
        _ when words.Contains("bowler") || words.Contains("player") || words.Contains("name") => ShotColumn.Bowler,
        _ when words.Contains("hand") => ShotColumn.Hand,
        _ when words.Contains("ball") => ShotColumn.Ball,
        _ when words.Contains("pins") || words.Contains("pinfall") => ShotColumn.Pins,
        _ when words.Contains("note") || words.Contains("notes") || words.Contains("comment") || words.Contains("remark") => ShotColumn.Note,
        _ when words.Contains("id") => ShotColumn.Id,
        _ => null,
    };

    private static SpeedPlace? SpeedAt(List<string> words) => true switch
    {
        _ when words.Contains("release") || words.Contains("launch") => SpeedPlace.Release,
        _ when words.Contains("average") || words.Contains("avg") || words.Contains("mean") => SpeedPlace.Average,
        _ when words.Contains("pins") || words.Contains("entry") || words.Contains("impact") => SpeedPlace.Pins,
        _ => null,
    };

    private static MappedUnit PlaceUnit(MappedUnit? unit, List<string> words) =>
        words.Contains("board") ? MappedUnit.Board
        : unit is { } known && MappedUnits.AllowedFor(ShotColumn.LaydownBoard).Contains(MappedUnits.NameOf(known)) ? known
        : MappedUnit.Ours;

    /// <summary>The distance in words such as "40 ft", "40ft" (cut into two words) or "12 m"; a bare number is taken as feet.</summary>
    private static double? DistanceIn(List<string> words)
    {
        for (var i = 0; i < words.Count; i++)
        {
            if (double.TryParse(words[i], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            {
                var metres = i + 1 < words.Count && words[i + 1] is "m" or "metre" or "metres" or "meter" or "meters";
                var feet = metres ? Math.Round(number * FeetPerMetre, 3) : number;
                return feet <= 60 ? feet : null;
            }
        }

        return null;
    }

    private static MappedUnit? Unit(string heading, List<string> words)
    {
        if (heading.Contains("km/h", StringComparison.OrdinalIgnoreCase) || words.Contains("kmh") || words.Contains("kph"))
        {
            return MappedUnit.KilometrePerHour;
        }

        if (heading.Contains("m/s", StringComparison.OrdinalIgnoreCase))
        {
            return MappedUnit.MetrePerSecond;
        }

        foreach (var word in words)
        {
            MappedUnit? unit = word switch
            {
                "mph" => MappedUnit.MilePerHour,
                "board" or "boards" => MappedUnit.Board,
                "mm" => MappedUnit.Millimetre,
                "cm" => MappedUnit.Centimetre,
                "m" => MappedUnit.Metre,
                "in" or "inch" or "inches" => MappedUnit.Inch,
                "ft" or "feet" => MappedUnit.Foot,
                "deg" or "degrees" => MappedUnit.Degree,
                "rad" or "radians" => MappedUnit.Radian,
                "rpm" => MappedUnit.Rpm,
                _ => null,
            };
            if (unit is not null)
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>The words of a heading in lower case: cut at spaces, signs, a capital after a small letter, and between digits and letters.</summary>
    private static List<string> Words(string heading)
    {
        var spaced = new StringBuilder();
        var before = ' ';
        foreach (var character in heading)
        {
            var here = char.IsLetterOrDigit(character) || (character == '.' && char.IsAsciiDigit(before)) ? character : ' ';
            if ((char.IsLower(before) && char.IsUpper(here)) || (char.IsDigit(before) && char.IsLetter(here)) || (char.IsLetter(before) && char.IsDigit(here)))
            {
                spaced.Append(' ');
            }

            spaced.Append(here);
            before = here;
        }

        return
        [
            .. spaced.ToString().ToLowerInvariant()
                .Replace("lay down", "laydown", StringComparison.Ordinal)
                .Replace("break point", "breakpoint", StringComparison.Ordinal)
                .Replace("boards", "board", StringComparison.Ordinal)
                .Split(' ', StringSplitOptions.RemoveEmptyEntries),
        ];
    }
}
