using System.Globalization;
using AimTrainer.Domain;
using AimTrainer.Sessions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace AimTrainer.Web;

/// <summary>Programs and the groups that follow them.</summary>
internal static class GroupApi
{
    private const int MostBytes = 64 * 1024, LongestName = 200, MostRoles = 6;

    public static void Map(IEndpointRouteBuilder api)
    {
        var programs = api.MapGroup("/programs").WithTags("Groups");
        programs.MapGet("/", (ProgramShelf shelf) => TypedResults.Json(
            shelf.All().Select(program => new ProgramListed(program.Id, program.Name, program.Purpose, program.WhoFor, program.Weeks.Count)).ToValueList(), WebJson.Options))
            .Describe("All programs.", null, "Programs");
        var groups = api.MapGroup("/groups").WithTags("Groups");
        groups.MapGet("/", (GroupRegister register) => TypedResults.Json(register.All, WebJson.Options)).Describe("All groups.", null, "Groups");
        groups.MapPost("/", MakeAsync).Describe("Makes a group.", new ApiText("NewGroup", nameof(GroupMade), 201, ApiTexts.Json, []));
        groups.MapDelete("/{id}", Delete).Describe("Dissolves a group. The record of its members stays as it is.", null, nameof(Done), 404);
        groups.MapPost("/{id}/members", JoinAsync).Describe("A bowler joins a group, or is given another level or lane.", "Member", nameof(Done), 404, 409);
        groups.MapPost("/{id}/leavers", LeaveAsync).Describe("A bowler leaves a group.", "BowlerNamed", nameof(Done), 404);
        groups.MapPost("/{id}/lanes", LanesAsync).Describe("Gives every member without a lane one of these.", "OnLanes", nameof(Done), 404);
        groups.MapPost("/{id}/start", StartAsync).Describe("Starts a drill for every member who has a lane and is here.", "StartGroup", "MembersStarted", 404);
    }

    private static async Task<IResult> MakeAsync(HttpContext context, GroupRegister register, ProgramShelf shelf, CancellationToken cancellationToken)
    {
        var (group, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => Group(json, register, shelf), cancellationToken).ConfigureAwait(false);
        return group is null ? answer! : Kept(context, $"group {group.Id} made", () => register.Save(group), () => new GroupMade(group.Id), StatusCodes.Status201Created);
    }

    private static BowlerGroup? Group(ObjectReader json, GroupRegister register, ProgramShelf shelf)
    {
        var name = json.Text("name", BowlerGroup.LongestName);
        var id = json.Text("program", 60);
        var program = id is null ? null : shelf.Find(id);
        if (id is not null && program is null)
        {
            json.Report("program", FoundText.Quoted(id), $"the id of a program: {string.Join(", ", shelf.All().Select(one => one.Id))}");
        }

        DateOnly? starts = null;
        if (json.Text("starts", 10) is { } day)
        {
            starts = DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var found) ? found : null;
            if (starts is null)
            {
                json.Report("starts", FoundText.Quoted(day), "a day written as 2026-09-01");
            }
        }

        return name is null || program is null || starts is not { } first
            ? null
            : new BowlerGroup { Id = register.NewId(name), Name = name.Trim(), ProgramId = program.Id, Starts = first };
    }

    private static IResult Delete(string id, HttpContext context, GroupRegister register) =>
        register.Find(id) is null ? NoGroup(id) : Kept(context, $"group {id} dissolved", () => register.Change(all => all.Where(group => group.Id != id)), () => Done.It);

    private static async Task<IResult> JoinAsync(
        string id, HttpContext context, GroupRegister register, ProgramShelf shelf, PeopleRegister people, LiveStations live, CancellationToken cancellationToken)
    {
        if (register.Find(id) is not { } group)
        {
            return NoGroup(id);
        }

        if (shelf.Find(group.ProgramId) is not { } program)
        {
            return Problems.Refused($"the group's program {group.ProgramId} is gone or has mistakes: mend it first");
        }

        var (member, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => Member(json, program, live.Count), cancellationToken).ConfigureAwait(false);
        if (member is null)
        {
            return answer!;
        }

        var consent = people.Find(member.Bowler);
        var others = group.Members.AsEnumerable().Where(one => !BowlerName.Same(one.Bowler, member.Bowler)).ToList();
        if (program.Joining.WhyNot(consent?.IsMinor ?? false, consent?.HasGuardian ?? false, others.Count) is { } why && group.Find(member.Bowler) is null)
        {
            return Problems.Refused(why);
        }

        if (others.Count >= BowlerGroup.MostMembers)
        {
            return Problems.Refused($"a group has at most {BowlerGroup.MostMembers} members");
        }

        if (member.Station is { } lane && others.Count(one => one.Station == lane) >= Lineup.MostBowlers)
        {
            return Problems.Refused($"lane {lane} has {Lineup.MostBowlers} bowlers of this group, as many as take turns: choose another");
        }

        return Kept(context, $"group {id}: a member", () => register.Change(all => all.Select(one => one.Id != id ? one : one with
        {
            Members = one.Find(member.Bowler) is null
                ? one.Members.AsEnumerable().Append(member).ToValueList()
                : one.Members.AsEnumerable().Select(old => BowlerName.Same(old.Bowler, member.Bowler) ? member with { Balls = old.Balls } : old).ToValueList(),
        })), () => Done.It);
    }

    private static GroupMember? Member(ObjectReader json, ProgramScript program, int lanes)
    {
        var bowler = json.Text("bowler", LongestName);
        var hand = json.OptionalChoice<Hand>("hand") ?? Hand.Right;
        var level = json.OptionalWord("level", [.. program.Levels.AsEnumerable().Select(one => one.Name)]) ?? program.Levels[0].Name;
        var station = json.OptionalWhole("station", 1, lanes);
        return bowler is null ? null : new GroupMember(bowler.Trim(), hand, level, (int?)station);
    }

    private static async Task<IResult> LeaveAsync(string id, HttpContext context, GroupRegister register, CancellationToken cancellationToken)
    {
        if (register.Find(id) is null)
        {
            return NoGroup(id);
        }

        var (bowler, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => json.Text("bowler", LongestName), cancellationToken).ConfigureAwait(false);
        return bowler is null ? answer! : Kept(context, $"group {id}: a member left", () => register.Change(all => all.Select(one => one.Id != id ? one : one with
        {
            Members = one.Members.AsEnumerable().Where(member => !BowlerName.Same(member.Bowler, bowler)).ToValueList(),
        })), () => Done.It);
    }

    private static async Task<IResult> LanesAsync(string id, HttpContext context, GroupRegister register, LiveStations live, CancellationToken cancellationToken)
    {
        if (register.Find(id) is not { } group)
        {
            return NoGroup(id);
        }

        var (lanes, answer) = await BodyReading.ReadAsync(
            context.Request, MostBytes, json => json.Numbers("lanes", 1, 64, 1, live.Count) is { } found ? found.Select(one => (int)one.Number).Distinct().ToList() : null, cancellationToken).ConfigureAwait(false);
        return lanes is null ? answer! : Kept(context, $"group {id}: lanes given", () => register.Save(group.OnLanes(lanes)), () => Done.It);
    }

    private static async Task<IResult> StartAsync(string id, HttpContext context, GroupRegister register, GroupLanes lanes, DrillShelf shelf, CancellationToken cancellationToken)
    {
        if (register.Find(id) is not { } group)
        {
            return NoGroup(id);
        }

        var (wish, answer) = await BodyReading.ReadAsync(context.Request, MostBytes, json => StartWish(json, group, shelf), cancellationToken).ConfigureAwait(false);
        if (wish is null)
        {
            return answer!;
        }

        // What was typed is kept before anybody starts: whoever is refused is started again without typing it anew.
        if (wish.Balls.Count > 0)
        {
            try
            {
                register.Change(all => all.Select(one => one.Id != id ? one : one with { Members = WithBalls(one.Members, wish.Balls) }));
            }
            catch (StoreUnavailableException exception)
            {
                return Problems.NotKept(exception.Message);
            }

            group = register.Find(id) ?? group;
        }

        AuditNote.On(context, $"group {id} starts {wish.Drill}");
        return TypedResults.Json(await lanes.StartAsync(group, wish.Drill, wish.Absent, cancellationToken).ConfigureAwait(false), WebJson.Options);
    }

    private static ValueList<GroupMember> WithBalls(ValueList<GroupMember> members, ValueList<MemberBall> balls) => members.AsEnumerable().Select(member =>
    {
        var named = balls.AsEnumerable().Where(one => BowlerName.Same(one.Bowler, member.Bowler)).Select(one => one.Ball).ToList();
        return named.Count == 0 ? member : member with { Balls = member.Balls.AsEnumerable().Where(old => !named.Exists(ball => ball.Role == old.Role)).Concat(named).ToValueList() };
    }).ToValueList();

    private static GroupStart? StartWish(ObjectReader json, BowlerGroup group, DrillShelf shelf)
    {
        var drill = json.Text("drill", 60);
        var absent = json.OptionalTexts("absent", BowlerGroup.MostMembers, LongestName);
        var read = drill is not null && shelf.FileOf(drill) is { } file ? DrillShelf.Read(file) : null;
        if (drill is not null && read is null)
        {
            json.Report("drill", FoundText.Quoted(drill), "the id of a drill (GET /api/drills)");
        }

        foreach (var problem in read?.Problems ?? [])
        {
            json.Report("drill", $"a mistake in it: {problem}", "a drill without mistakes (see its page)");
        }

        var balls = Balls(json, group, read?.Value is { } source ? DrillSummary.Of(source.Script).Balls : null);
        return drill is null ? null : new GroupStart(drill, absent, balls);
    }

    private static ValueList<MemberBall> Balls(ObjectReader json, BowlerGroup group, ValueList<string>? roles)
    {
        var balls = new List<MemberBall>();
        foreach (var one in json.OptionalObjects("balls", 0, BowlerGroup.MostMembers * MostRoles, "balls") ?? [])
        {
            var (bowler, role, name) = (one.Text("bowler", LongestName), one.Text("role", LongestName), one.Text("name", LongestName));
            one.Done();
            if (bowler is not null && group.Find(bowler) is null)
            {
                one.Report("bowler", FoundText.Quoted(bowler), "a member of the group");
            }

            if (role is not null && roles is not null && !roles.AsEnumerable().Contains(role))
            {
                one.Report("role", FoundText.Quoted(role), roles.Count == 0 ? "no balls: this drill compares none" : $"a role of the drill: {string.Join(", ", roles)}");
            }

            if (bowler is not null && role is not null && balls.Exists(ball => BowlerName.Same(ball.Bowler, bowler) && ball.Ball.Role == role))
            {
                one.Report("role", $"{FoundText.Quoted(role)} of {bowler} a second time", "one ball for each role");
            }

            if (bowler is not null && role is not null && name is not null)
            {
                balls.Add(new MemberBall(bowler, new ChosenBall(role, name.Trim())));
            }
        }

        return balls.ToValueList();
    }

    private static IResult Kept<T>(HttpContext context, string note, Action act, Func<T> answer, int status = StatusCodes.Status200OK)
    {
        try
        {
            act();
        }
        catch (StoreUnavailableException exception)
        {
            return Problems.NotKept(exception.Message);
        }

        AuditNote.On(context, note);
        return TypedResults.Json(answer(), WebJson.Options, statusCode: status);
    }

    private static IResult NoGroup(string id) => Problems.NotFound($"group: found {FoundText.Quoted(id)}; allowed: the id of a group (GET /api/groups)");
}
