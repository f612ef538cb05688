using System.Globalization;

namespace AimTrainer.Browser.Tests;

/// <summary>What happened on the lanes before a test looks: an invented scenario.</summary>
internal static class ConsoleExtensions
{
    /// <summary>Starts a session; its first target is shown when it is begun.</summary>
    public static async Task SessionAsync(this ServedConsole console, int lane, string bowler, string drill, string hand = "right", bool begin = true)
    {
        await console.PostAsync($"/api/stations/{lane}/sessions", $$"""{"bowler":"{{bowler}}","drill":"{{drill}}","hand":"{{hand}}","ball":"blue","patternFeet":40,"seed":1}""");
        if (begin)
        {
            await console.ActAsync(lane, """{"kind":"begin"}""");
        }
    }

    /// <summary>A coach's action.</summary>
    public static Task ActAsync(this ServedConsole console, int lane, string action) => console.PostAsync($"/api/stations/{lane}/actions", action);

    /// <summary>A shot with a crossing at a distance, boards and feet.</summary>
    public static Task ShotAsync(this ServedConsole console, int lane, string id, params (double Feet, double Board)[] crossings)
    {
        var list = string.Join(',', crossings.Select(each => string.Create(CultureInfo.InvariantCulture, $$"""{"feet":{{each.Feet}},"board":{{each.Board}}}""")));
        return console.PostAsync($"/api/stations/{lane}/shots", $$"""{"id":"{{id}}","crossings":[{{list}}]}""");
    }

    /// <summary>A group in the second week of its program, and three of it taking turns on lane 5. Invented people.</summary>
    public static async Task GroupAsync(this ServedConsole console)
    {
        var starts = DateTime.UtcNow.AddDays(-9).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        await console.PostAsync("/api/groups", $$"""{"name":"Tuesday class","program":"league-player","starts":"{{starts}}"}""");
        foreach (var (bowler, lane) in ((string, int)[])[("Mira", 1), ("Noor Vale", 5), ("Ola", 5), ("Pim", 5)])
        {
            await console.PostAsync("/api/groups/tuesday-class/members", $$"""{"bowler":"{{bowler}}","station":{{lane}}}""");
        }

        await console.PostAsync("/api/groups/tuesday-class/start", """{"drill":"ten-shot-spread","absent":["Mira"]}""");
        await console.ActAsync(5, """{"kind":"begin"}""");
        await console.ShotAsync(5, "noor-1", (15, 11));
        await console.ActAsync(5, """{"kind":"note","text":"Arm sore"}""");
        await console.ActAsync(5, """{"kind":"begin"}""");
        await console.ShotAsync(5, "ola-1", (15, 9));
        await console.ActAsync(5, """{"kind":"begin"}""");
    }
}
