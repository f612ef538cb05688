using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>Reads what somebody who starts a session asks for; the shape is in <c>docs/api.md</c>.</summary>
internal static class SessionWishJson
{
    private const int LongestName = 200, LongestNote = 2000, MostBalls = 50;

    public static FileRead<SessionWish> Read(ReadOnlySpan<byte> utf8, DrillShelf shelf)
    {
        var file = JsonFile.Read(RequestBody.Name, utf8);
        var wish = file.Root is { } root && ObjectReader.Of(file, root) is { } json ? Wish(json, shelf) : null;
        return new FileRead<SessionWish>(file.HasProblems ? null : wish, file.Problems);
    }

    private static SessionWish? Wish(ObjectReader json, DrillShelf shelf)
    {
        var bowler = json.Text("bowler", LongestName);
        var hand = json.OptionalChoice<Hand>("hand");
        var ball = json.OptionalText("ball", LongestName);
        var balls = Balls(json);
        var drill = Drill(json, shelf);
        var pattern = json.OptionalNumber("patternFeet", PatternLength.Shortest, PatternLength.Longest);
        var note = json.OptionalText("laneNote", LongestNote);
        var board = json.OptionalNumber("breakpointBoard", Board.NearEdge.Boards, Board.FarEdge.Boards);
        var feet = json.OptionalNumber("breakpointFeet", 0, LaneProfile.HeadPin.Value);
        var seed = json.OptionalWhole("seed", 0, uint.MaxValue);
        json.Done();
        return bowler is null || drill is null
            ? null
            : new SessionWish
            {
                Bowler = bowler,
                Drill = drill,
                Lane = LaneProfileReader.Default,
                Hand = hand,
                Ball = ball,
                Balls = balls,
                Breakpoint = board is { } at ? new Breakpoint(Board.FromMeasurement(at), feet is { } down ? Feet.FromMeasurement(down) : null) : null,
                PatternLength = pattern is { } length ? Feet.FromFeet(length) : null,
                LaneNote = note,
                Seed = (ulong?)seed,
            };
    }

    private static ValueList<ChosenBall> Balls(ObjectReader json)
    {
        var balls = new List<ChosenBall>();
        foreach (var one in json.OptionalObjects("balls", 0, MostBalls, "balls") ?? [])
        {
            var (role, name) = (one.Text("role", LongestName), one.Text("name", LongestName));
            one.Done();
            if (role is not null && name is not null)
            {
                balls.Add(new ChosenBall(role, name));
            }
        }

        return balls.ToValueList();
    }

    private static DrillSource? Drill(ObjectReader json, DrillShelf shelf)
    {
        if (json.Text("drill", LongestName) is not { } id)
        {
            return null;
        }

        if (shelf.FileOf(id) is not { } file)
        {
            json.Report("drill", $"\"{id}\"", $"the id of a drill: {string.Join(", ", shelf.Files().Select(Path.GetFileNameWithoutExtension))}");
            return null;
        }

        var read = DrillShelf.Read(file);
        foreach (var problem in read.Problems)
        {
            json.Report("drill", $"a mistake in it: {problem}", "a drill without mistakes (see its page)");
        }

        return read.Value;
    }
}
