using System.CommandLine;
using System.CommandLine.Parsing;
using AimTrainer.Domain;

namespace AimTrainer.Commands;

/// <summary>Says in one line what is wrong with a command line and what to do.</summary>
internal static class WrongUsage
{
    public static string InWords(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var named = string.Join(' ', PathOf(parsed.CommandResult).Prepend("aimtrainer"));
        return $"{What(parsed, command)} (see: {named} --help)";
    }

    private static string What(ParseResult parsed, Command command)
    {
        var commands = command.Subcommands.Select(sub => sub.Name).ToList();
        if (parsed.UnmatchedTokens.Count > 0)
        {
            return Unknown(parsed.UnmatchedTokens[0], command, commands);
        }

        return commands.Count > 0 && command.Action is null
            ? $"a command is needed: {string.Join(", ", commands)}"
            : string.Join("; ", parsed.Errors.Select(error => error.Message.TrimEnd('.')));
    }

    private static string Unknown(string token, Command command, List<string> commands)
    {
        if (token.StartsWith('-'))
        {
            return $"{token}: no such option{Meant(token, command.Options.Select(option => option.Name))}";
        }

        return commands.Count > 0 && command.Action is null
            ? $"{token}: no such command{Meant(token, commands)}; allowed: {string.Join(", ", commands)}"
            : $"{token}: one word too many";
    }

    private static string Meant(string word, IEnumerable<string> words) =>
        Likeness.Nearest(word, words) is { } nearest ? $"; did you mean {nearest}?" : "";

    private static IEnumerable<string> PathOf(CommandResult command) => command.Parent is CommandResult parent
        ? PathOf(parent).Append(command.Command.Name) : [];
}
