using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Web;

namespace AimTrainer.Commands;

/// <summary>Sets the coach's passphrase. It is never an argument: those are seen by every program on the machine, and kept in histories.</summary>
internal static class PassphraseCommand
{
    public static Command Create(UserConsole console)
    {
        var remove = new Option<bool>("--remove") { Description = "Take the passphrase away: then everybody at this machine is the coach, and nobody beyond it gets in." };
        var command = new Command(
            "passphrase",
            $"Set the coach's passphrase, {Passphrase.Shortest} to {Passphrase.Longest} characters: typed twice without being shown, or as one line from a pipe. "
            + "A host that runs takes it up at once; whoever was signed in as the coach signs in anew.")
        {
            remove,
        };
        command.SetAction(parsed =>
        {
            var passphrase = new Passphrase(DataPlace.Of(parsed));
            if (parsed.GetValue(remove))
            {
                console.Out.WriteLine(passphrase.Remove() ? "The passphrase is removed." : "There was no passphrase.");
                return ExitCodes.Ok;
            }

            var words = Read(console);
            if (Passphrase.Problem(words) is { } problem)
            {
                throw new UserException(problem);
            }

            try
            {
                passphrase.Set(words);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                throw new UserException($"{DataPlace.Of(parsed)}: the passphrase could not be kept: {exception.Message}", ExitCodes.Failed);
            }

            console.Out.WriteLine("The passphrase is set.");
            return ExitCodes.Ok;
        });
        return command;
    }

    private static string Read(UserConsole console)
    {
        if (!console.PersonTypes)
        {
            return console.In.ReadLine() ?? throw new UserException("passphrase: found nothing; allowed: one line on the standard input");
        }

        var first = HiddenLine.Ask(console, "Passphrase: ");
        return HiddenLine.Ask(console, "Once more: ") == first ? first : throw new UserException("passphrase: the two are not the same; nothing was changed");
    }
}
