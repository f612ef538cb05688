using System.Globalization;

namespace AimTrainer.Domain;

/// <summary>Reads where a target is.</summary>
internal static class PlaceReader
{
    private const string MarkAllowed = "a mark of the lane and its number, such as \"arrow 2\", \"dot 3\" or \"downlane 1\", counted from the ball-hand edge";

    /// <summary>The place of a target, or null when it is wrong; that is reported.</summary>
    public static TargetPlace? Read(ObjectReader target)
    {
        if (!target.Has("board") && target.Has("feet") && !target.Has("mark") && !target.Has("breakpoint") && !target.Has("patternExit"))
        {
            target.Number("board", Board.NearEdge.Boards, Board.FarEdge.Boards);
            target.Number("feet", 0, LaneProfile.HeadPin.Value);
            return null;
        }

        var which = target.ExactlyOne("board", "mark", "breakpoint", "patternExit");
        if (which is null)
        {
            // Known names all the same, so that a lone "feet" or "plusBoards" is not called unknown.
            target.OptionalNumber("feet", 0, LaneProfile.HeadPin.Value);
            Plus(target);
            return null;
        }

        if (which != "mark" && target.Has("plusBoards"))
        {
            target.Report("plusBoards", $"\"plusBoards\" beside \"{which}\"", which == "board" ? "the sum of both as \"board\"" : $"plusBoards inside \"{which}\"");
            Plus(target);
        }

        if (which != "board" && target.Has("feet"))
        {
            target.Report("feet", $"\"feet\" beside \"{which}\"", $"no feet: \"{which}\" says how far");
            target.OptionalNumber("feet", 0, LaneProfile.HeadPin.Value);
        }

        return which switch
        {
            "board" => AtBoard(target),
            "mark" => AtMark(target),
            "breakpoint" => target.Object("breakpoint") is { } breakpoint ? AtBreakpoint(breakpoint) : null,
            _ => target.Object("patternExit") is { } exit ? AtPatternExit(exit) : null,
        };
    }

    /// <summary>Where a walk goes to: a board or a mark. Its distance is never used, and is that of the foul line.</summary>
    public static TargetPlace? ReadWalkEnd(ObjectReader to)
    {
        TargetPlace? place = to.ExactlyOne("board", "mark") switch
        {
            "board" => to.Number("board", Board.NearEdge.Boards, Board.FarEdge.Boards) is { } board
                ? new TargetPlace.AtBoard(Board.FromBoards(board), Feet.FromFeet(0)) : null,
            "mark" => Mark(to) is { } mark ? new TargetPlace.AtMark(mark.Kind, mark.Number, BoardOffset.Zero) : null,
            _ => null,
        };
        to.Done();
        return place;
    }

    private static TargetPlace.AtBoard? AtBoard(ObjectReader reader)
    {
        var board = reader.Number("board", Board.NearEdge.Boards, Board.FarEdge.Boards);
        var feet = reader.Number("feet", 0, LaneProfile.HeadPin.Value);
        return board is { } boards && feet is { } distance ? new TargetPlace.AtBoard(Board.FromBoards(boards), Feet.FromFeet(distance)) : null;
    }

    private static TargetPlace.AtMark? AtMark(ObjectReader target)
    {
        var mark = Mark(target);
        var plus = Plus(target);
        return mark is { } found ? new TargetPlace.AtMark(found.Kind, found.Number, plus) : null;
    }

    private static TargetPlace.AtBreakpoint AtBreakpoint(ObjectReader breakpoint)
    {
        var plus = Plus(breakpoint);
        var otherwise = breakpoint.OptionalObject("otherwise");
        var at = otherwise is null ? null : AtBoard(otherwise);
        otherwise?.Done();
        breakpoint.Done();
        return new TargetPlace.AtBreakpoint(plus, at is null ? null : new Crossing(at.Distance, at.Board));
    }

    private static TargetPlace.AtPatternExit AtPatternExit(ObjectReader exit)
    {
        var length = exit.OptionalNumber("patternFeet", PatternLength.Shortest, PatternLength.Longest);
        var plus = Plus(exit);
        exit.Done();
        return new TargetPlace.AtPatternExit(length is { } feet ? Feet.FromFeet(feet) : null, plus);
    }

    private static BoardOffset Plus(ObjectReader reader) => BoardOffset.FromBoards(reader.OptionalNumber("plusBoards", -20, 20) ?? 0);

    private static (MarkerKind Kind, int Number)? Mark(ObjectReader reader)
    {
        var text = reader.Text("mark", 20);
        if (text is null)
        {
            return null;
        }

        var words = text.Split(' ');
        if (words.Length == 2 && KindOf(words[0]) is { } kind
            && int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 99 && words[1][0] != '0')
        {
            return (kind, number);
        }

        reader.Report("mark", FoundText.Quoted(text), MarkAllowed);
        return null;
    }

    private static MarkerKind? KindOf(string word) => word switch
    {
        "arrow" => MarkerKind.Arrow,
        "dot" => MarkerKind.Dot,
        "downlane" => MarkerKind.Downlane,
        _ => null,
    };
}
