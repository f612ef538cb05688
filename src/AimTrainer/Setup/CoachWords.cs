using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Feeds;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Reads a coach's words at the terminal.</summary>
internal static class CoachWords
{
    public static IReadOnlyList<string> Help { get; } =
    [
        "10.5            the ball crossed board 10.5 at the target; 10.5/7 for both targets of a line; ? where nobody saw it",
        "10.5 @17.2 #late   with the speed in mph and a note",
        "void 7 foul     shot 7 does not count, and why; it is thrown again",
        "correct 7 11    shot 7 crossed board 11; both values are kept",
        "ball 7 Blue     shot 7 was thrown with Blue, of a comparison its name or its role; both are kept",
        "width 3         the target is 3 boards wide from now on; with a name where two are shown: width downlane 3",
        "move 12         the target's centre is board 12 from now on; move 12@40 also puts it at 40 ft",
        "skip            pass over this aim; skip block goes to the next block",
        "repeat          the last aim once more; repeat block begins the block again",
        "pause, resume   set shots aside for a while",
        "note ...        words for the record",
        "clear           takes the last result off the displays; the record stays as it is",
        "end [why]       end the session; leave: stop here and go on another day",
    ];

    /// <summary>Reads one line, a leading colon or not.</summary>
    public static CoachLine Parse(string line, SessionSnapshot now, DateTimeOffset at)
    {
        var words = line.TrimStart(':').Trim();
        var space = words.IndexOf(' ', StringComparison.Ordinal);
        var (verb, rest) = space < 0 ? (words, "") : (words[..space], words[(space + 1)..].Trim());
        return verb.ToUpperInvariant() switch
        {
            "HELP" => new CoachLine.Help(),
            "LEAVE" => new CoachLine.Leave(),
            "CLEAR" when rest.Length == 0 => new CoachLine.Clear(),
            "CLEAR" => new CoachLine.Wrong($"clear: found \"{rest}\"; allowed: nothing after it; void takes a shot out of the record"),
            "PAUSE" => new CoachLine.Act(new SessionInput.Pause(at)),
            "RESUME" => new CoachLine.Act(new SessionInput.Resume(at)),
            "END" => new CoachLine.Act(new SessionInput.End(at, rest)),
            "NOTE" => new CoachLine.Act(new SessionInput.TakeNote(at, rest)),
            "SKIP" when AsScope(rest) is { } scope => new CoachLine.Act(new SessionInput.Skip(at, scope)),
            "REPEAT" when AsScope(rest) is { } scope => new CoachLine.Act(new SessionInput.Repeat(at, scope)),
            "SKIP" or "REPEAT" => new CoachLine.Wrong($"{verb}: found \"{rest}\"; allowed: nothing, or block"),
            "VOID" => Void(rest, at),
            "CORRECT" => Correct(rest, now, at),
            "BALL" => Ball(rest, now, at),
            "WIDTH" => Width(rest, now, at),
            "MOVE" => Move(rest, now, at),
            _ => new CoachLine.Wrong($"found \"{verb}\"; allowed: a shot such as 10.5 or 10.5/7, or a word (help lists them)"),
        };
    }

    private static Scope? AsScope(string rest) => rest.ToUpperInvariant() switch { "" => Scope.Aim, "BLOCK" => Scope.Block, _ => null };

    private static CoachLine Void(string rest, DateTimeOffset at)
    {
        var (first, reason) = Cut(rest);
        return int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? new CoachLine.Act(new SessionInput.VoidShot(at, number, reason))
            : new CoachLine.Wrong($"void: found \"{rest}\"; allowed: the shot's number and why it does not count, as: void 7 foul");
    }

    private static CoachLine Correct(string rest, SessionSnapshot now, DateTimeOffset at)
    {
        var (first, boards) = Cut(rest);
        if (!int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return new CoachLine.Wrong($"correct: found \"{rest}\"; allowed: the shot's number and its boards, as: correct 7 11");
        }

        if (now.LastShots.AsEnumerable().FirstOrDefault(shot => shot.Number == number) is not { } before)
        {
            return new CoachLine.Wrong($"correct: shot {number} is not among the last ten of this block");
        }

        var shown = new Aim(before.Aim, before.Targets.AsEnumerable().Select(result => new NamedTarget(result.Name, result.Target)).ToValueList());
        return TypedShots.Parse(boards, shown, now.Setup!.Lane) switch
        {
            TypedLine.Throw thrown => new CoachLine.Act(new SessionInput.CorrectShot(at, number, thrown.Shot)),
            TypedLine.Wrong wrong => new CoachLine.Wrong($"correct: found {wrong.Found}; allowed: {wrong.Allowed}"),
            _ => new CoachLine.Wrong($"correct: found \"{boards}\"; allowed: the boards that shot {number} crossed, as 11 or 11/7"),
        };
    }

    private static CoachLine Ball(string rest, SessionSnapshot now, DateTimeOffset at)
    {
        var (first, ball) = Cut(rest);
        if (!int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || ball.Length is 0 or > 200)
        {
            return new CoachLine.Wrong($"ball: found \"{rest}\"; allowed: the shot's number and the ball's name, as: ball 7 Blue");
        }

        if (now.LastShots.AsEnumerable().FirstOrDefault(shot => shot.Number == number) is not { } before)
        {
            return new CoachLine.Wrong($"ball: shot {number} is not among the last ten of this block");
        }

        var role = now.Setup!.Balls.AsEnumerable().FirstOrDefault(chosen => string.Equals(chosen.Role, ball, StringComparison.OrdinalIgnoreCase));
        return new CoachLine.Act(new SessionInput.CorrectShot(at, number, before.Shot with { Ball = role?.Name ?? ball }));
    }

    private static CoachLine Width(string rest, SessionSnapshot now, DateTimeOffset at)
    {
        var (name, value) = CutLast(rest);
        return Target(name, now) is { } target && Number(value, 0.5, 20) is { } width
            ? new CoachLine.Act(new SessionInput.ChangeTarget(at, target, BoardOffset.FromBoards(width), null, null))
            : new CoachLine.Wrong($"width: found \"{rest}\"; allowed: 0.5 to 20 boards{Names(now)}");
    }

    private static CoachLine Move(string rest, SessionSnapshot now, DateTimeOffset at)
    {
        var (name, value) = CutLast(rest);
        var parts = value.Split('@');
        var feet = parts.Length > 1 ? Number(parts[1], 0, 60) : null;
        return Target(name, now) is { } target && Number(parts[0], 0.5, 39.5) is { } board && (parts.Length == 1 || (parts.Length == 2 && feet is not null))
            ? new CoachLine.Act(new SessionInput.ChangeTarget(
                at, target, null, Board.FromBoards(board), feet is { } distance ? Feet.FromFeet(distance) : null))
            : new CoachLine.Wrong($"move: found \"{rest}\"; allowed: a board from 0.5 to 39.5, or board@feet{Names(now)}");
    }

    /// <summary>The target that is meant: by its name, or the only one.</summary>
    private static string? Target(string name, SessionSnapshot now)
    {
        var shown = now.Shown?.Targets.AsEnumerable().Select(target => target.Name).ToList() ?? [];
        return name.Length == 0
            ? shown.Count == 1 ? shown[0] : null
            : shown.Find(known => known.Equals(name, StringComparison.OrdinalIgnoreCase));
    }

    private static string Names(SessionSnapshot now) => now.Shown is { IsLine: true } line
        ? $", with the target's name before it: {string.Join(", ", line.Targets.AsEnumerable().Select(target => target.Name))}" : "";

    // A comma is a decimal sign here as it is in a typed shot.
    private static double? Number(string text, double low, double high) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value >= low && value <= high ? value : null;

    private static (string First, string Others) Cut(string text)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        return space < 0 ? (text, "") : (text[..space], text[(space + 1)..].Trim());
    }

    private static (string Others, string Last) CutLast(string text)
    {
        var space = text.LastIndexOf(' ');
        return space < 0 ? ("", text) : (text[..space].Trim(), text[(space + 1)..]);
    }
}
