using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Reads a coach's action that comes as one JSON object; the shapes are in <c>docs/api.md</c>.</summary>
internal static class ActionJson
{
    private const int LongestWords = 2000, LongestId = 200;

    private static readonly string[] Kinds = ["begin", "pause", "resume", "end", "skip", "repeat", "void", "correct", "target", "note"];

    /// <summary>Reads an action, or everything that is wrong with it.</summary>
    /// <param name="utf8">The whole object.</param>
    /// <param name="lane">The session's lane.</param>
    /// <param name="at">The time.</param>
    public static FileRead<SessionInput> Read(ReadOnlySpan<byte> utf8, LaneProfile lane, DateTimeOffset at)
    {
        var file = JsonFile.Read(RequestBody.Name, utf8);
        var input = file.Root is { } root && ObjectReader.Of(file, root) is { } json ? Action(json, lane, at) : null;
        return new FileRead<SessionInput>(file.HasProblems ? null : input, file.Problems);
    }

    private static SessionInput? Action(ObjectReader json, LaneProfile lane, DateTimeOffset at)
    {
        SessionInput? input = json.Word("kind", Kinds) switch
        {
            "begin" => new SessionInput.Begin(at),
            "pause" => new SessionInput.Pause(at),
            "resume" => new SessionInput.Resume(at),
            "end" => new SessionInput.End(at, json.OptionalText("why", LongestWords) ?? ""),
            "skip" => new SessionInput.Skip(at, json.OptionalChoice<Scope>("scope") ?? Scope.Aim),
            "repeat" => new SessionInput.Repeat(at, json.OptionalChoice<Scope>("scope") ?? Scope.Aim),
            "void" => new SessionInput.VoidShot(at, Number(json), json.Text("reason", LongestWords) ?? ""),
            "correct" => Correct(json, lane, at),
            "target" => Target(json, at),
            "note" => new SessionInput.TakeNote(at, json.Text("text", LongestWords) ?? ""),
            _ => null,
        };
        var id = json.OptionalText("id", LongestId);
        json.Done();
        return input is null ? null : input with { ActionId = id };
    }

    private static int Number(ObjectReader json) => (int)(json.Whole("number", 1, int.MaxValue) ?? 0);

    private static SessionInput.CorrectShot? Correct(ObjectReader json, LaneProfile lane, DateTimeOffset at)
    {
        var number = Number(json);
        return json.Object("shot") is { } shot && ShotJson.Read(shot, lane, ShotSource.Typed) is { } received
            ? new SessionInput.CorrectShot(at, number, received.Shot)
            : null;
    }

    private static SessionInput.ChangeTarget Target(ObjectReader json, DateTimeOffset at)
    {
        var name = json.Text("target", 200) ?? "";
        var width = json.OptionalNumber("widthBoards", Domain.Target.Narrowest, Domain.Target.Widest);
        var centre = json.OptionalNumber("centreBoard", Board.NearEdge.Boards, Board.FarEdge.Boards);
        var feet = json.OptionalNumber("distanceFeet", 0, LaneProfile.HeadPin.Value);
        if (width is null && centre is null && feet is null)
        {
            json.Report("neither a width, a centre nor a distance", "widthBoards, centreBoard or distanceFeet, or several of them");
        }

        return new SessionInput.ChangeTarget(
            at, name, width is { } wide ? BoardOffset.FromBoards(wide) : null, centre is { } board ? Board.FromBoards(board) : null,
            feet is { } distance ? Feet.FromFeet(distance) : null);
    }
}
