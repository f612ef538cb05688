using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Output;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Plans a straight line: laydown, angle, slide, boards, moves.</summary>
internal static class LineCommand
{
    private const int FirstWalkArrow = 2;
    private const int LastWalkArrow = 4;

    public static Command Create(UserConsole console)
    {
        var targets = new Argument<string[]>("targets")
        {
            Description = "The line's targets, the nearer one first: board 20 at 15 ft to board 10 at 42 ft is 20@15 10@42.",
            Arity = new ArgumentArity(2, 2),
            HelpName = "BOARD@FEET BOARD@FEET",
        };
        var (hand, lane) = (CommonOptions.Hand(), CommonOptions.Lane());
        var pattern = CommonOptions.Number("--pattern", "Length of the oil pattern in feet, for its exit board.", 32, 52, "FEET");
        var slide = CommonOptions.Number(
            "--slide-distance", "Boards from the ball's middle at the laydown to your slide foot (7 when not given; most have 4 to 10).", 0, 20, "BOARDS");
        var move = new Option<LineMove?>("--move")
        {
            Description = "A move of feet and target at the arrows, in boards, positive inward: 2,1 is 2-and-1. Without it the usual ones.",
            HelpName = "FEET,TARGET",
            CustomParser = ParseMove,
        };
        var walk = new Option<WalkKeeps?>("--walk")
        {
            Description = "Also a line for each part of the lane, from the second to the fourth arrow, keeping the breakpoint or the angle.",
            HelpName = "breakpoint|angle",
            CustomParser = ParseWalk,
        };
        var json = CommonOptions.Json();
        var command = new Command("line", "Plan a line: laydown, launch angle, slide board, boards at every distance, and what moves do to it.")
        {
            targets, hand, lane, slide, pattern, move, walk, json,
        };
        command.SetAction(parsed =>
        {
            var planned = Plan(
                parsed.GetValue(targets)!, parsed.GetValue(hand) ?? Hand.Right, LaneFile.Read(parsed.GetValue(lane)), parsed.GetValue(slide));
            var moves = parsed.GetValue(move) is { } one ? [one] : LineMoves.Usual;
            Crossing? exit = parsed.GetValue(pattern) is { } feet ? LineArithmetic.ExitOfPattern(Feet.FromFeet(feet)) : null;
            var walked = parsed.GetValue(walk) is { } keeps ? Walked(planned, keeps) : null;
            try
            {
                if (parsed.GetValue(json))
                {
                    Json.Print(console, LineAnswer.Of(planned, exit, moves, walked));
                }
                else
                {
                    LineText.Print(console, planned, exit, moves, walked, parsed.GetValue(walk));
                }
            }
            catch (ArgumentOutOfRangeException)
            {
                throw TooSteep(planned);
            }

            return ExitCodes.Ok;
        });
        return command;
    }

    private static LinePlan Plan(string[] words, Hand hand, LaneProfile lane, double? slide)
    {
        var targets = LineNotation.Parse(string.Join(' ', words), out var problem) ?? throw new UserException($"line: {problem}");
        try
        {
            return LinePlan.Through(targets[0], targets[1], hand, lane, slide is { } boards ? BoardOffset.FromBoards(boards) : null);
        }
        catch (ArgumentOutOfRangeException)
        {
            throw new UserException($"line: {LineNotation.Write(targets)} runs too far across the lane to be a line; choose targets that lie farther apart downlane");
        }
    }

    private static ValueList<LinePlan> Walked(LinePlan planned, WalkKeeps keeps)
    {
        if (keeps == WalkKeeps.Breakpoint && planned.Far.Distance <= planned.Lane.ArrowsDistance)
        {
            throw new UserException(string.Create(
                CultureInfo.InvariantCulture,
                $"--walk breakpoint: the farther target lies at {planned.Far.Distance} ft; allowed: beyond the arrows at {planned.Lane.ArrowsDistance} ft"));
        }

        try
        {
            return LineWalk.Arrows(planned, FirstWalkArrow, LastWalkArrow, keeps)
                ?? throw new UserException($"--walk: the lane profile has no arrow {FirstWalkArrow} or {LastWalkArrow}; add them to its markers (docs/lanes.md)");
        }
        catch (ArgumentException)
        {
            throw TooSteep(planned);
        }
    }

    private static UserException TooSteep(LinePlan planned) =>
        new($"line: {LineNotation.Write(planned)} or a move of it runs too far across the lane; choose targets that lie farther apart downlane");

    private static LineMove? ParseMove(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var parts = text.Split(',');
        if (parts.Length == 2 && Boards(parts[0]) is { } feet && Boards(parts[1]) is { } target)
        {
            return new LineMove(feet, target);
        }

        result.AddError($"--move: found {FoundText.Short(text)}; allowed: two numbers from -20 to 20, as 2,1");
        return null;
    }

    private static BoardOffset? Boards(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var boards) && Math.Abs(boards) <= 20
            ? BoardOffset.FromBoards(boards)
            : null;

    private static WalkKeeps? ParseWalk(ArgumentResult result)
    {
        switch (result.Tokens[0].Value.ToUpperInvariant())
        {
            case "BREAKPOINT":
                return WalkKeeps.Breakpoint;
            case "ANGLE":
                return WalkKeeps.Angle;
            default:
                result.AddError($"--walk: found {FoundText.Short(result.Tokens[0].Value)}; allowed: breakpoint, angle");
                return null;
        }
    }
}
