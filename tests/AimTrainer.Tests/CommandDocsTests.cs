using System.CommandLine;
using AimTrainer.Commands;
using AimTrainer.Output;

namespace AimTrainer.Tests;

/// <summary>What the documents say of all commands, against the commands.</summary>
public sealed class CommandDocsTests
{
    [Fact]
    public void Json_CommandsWithoutIt_AreThoseThatTheDocsName()
    {
        var without = Ends(CommandLine.Create(UserConsole.OfProcess()), "").Where(one => one.Command.Options.All(option => option.Name != "--json")).Select(one => one.Name).Order(StringComparer.Ordinal);

        var docs = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "json.md"));
        var paragraph = docs[docs.IndexOf("are without it", StringComparison.Ordinal)..].Split("\n\n")[0];
        Assert.Equal(without, paragraph.Split('`').Where((_, i) => i % 2 == 1).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Help_OfWhatIsUsual_IsInWordsThatCanBeTyped()
    {
        var shown = Ends(CommandLine.Create(UserConsole.OfProcess()), "").SelectMany(one => one.Command.Options).Where(option => option.HasDefaultValue)
            .Select(option => option.GetDefaultValue()?.ToString() ?? "").ToList();

        Assert.Contains("1920x1080", shown);
        Assert.All(shown, text => Assert.DoesNotContain("{", text, StringComparison.Ordinal));
    }

    private static IEnumerable<(string Name, Command Command)> Ends(Command command, string before) => command.Subcommands.SelectMany(one =>
    {
        var name = before + one.Name;
        return (one.Action is null ? [] : new[] { (name, one) }).Concat(Ends(one, name + " "));
    });
}
