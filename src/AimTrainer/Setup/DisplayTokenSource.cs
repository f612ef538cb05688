using System.Text;
using AimTrainer.Output;
using AimTrainer.Sessions;
using AimTrainer.Web;

namespace AimTrainer.Setup;

/// <summary>Where a display finds its token. Never on the command line: that is seen by every program of the machine, and kept in histories.</summary>
internal static class DisplayTokenSource
{
    /// <summary>The variable of the environment.</summary>
    public const string Variable = "AIMTRAINER_DISPLAY_TOKEN";

    private const string Start = "display-";

    /// <summary>The token: of the file that is named, else of the environment, else the one that is kept, else asked for once where a person types.</summary>
    /// <returns>The token; null for none, which is enough for a host of this machine that has no passphrase.</returns>
    /// <exception cref="UserException">The file cannot be read, or what was found is no token.</exception>
    public static string? Find(UserConsole console, string dataFolder, string? file, Uri server, int station, ScreenKind kind)
    {
        if (file is not null)
        {
            return Checked(Encoding.UTF8.GetString(UserFiles.ReadAllBytes(file)).Trim(), file);
        }

        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
        {
            return Checked(named.Trim(), Variable);
        }

        var held = new HeldTokens(dataFolder);
        try
        {
            if (held.Find(server, station, kind) is { } kept)
            {
                return kept;
            }

            if (!console.PersonTypes || server.IsLoopback)
            {
                return null;
            }

            var asked = Checked(HiddenLine.Ask(console, "Token of this display (from the coach's console, Displays; it is not shown): ").Trim(), "token");
            held.Keep(server, station, kind, asked);
            console.Out.WriteLine($"Kept in {held.Name}, for you alone; it is not asked for again.");
            return asked;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            throw new UserException(exception.Message, ExitCodes.Failed);
        }
    }

    private static string Checked(string token, string place) => token.StartsWith(Start, StringComparison.Ordinal) && !token.Any(char.IsWhiteSpace)
        ? token : throw new UserException($"{place}: found something else; allowed: the token of a display, which begins with {Start}");
}
