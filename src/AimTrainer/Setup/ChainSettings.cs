using System.CommandLine;
using AimTrainer.Output;
using AimTrainer.Store;

namespace AimTrainer.Setup;

/// <summary>How a center reaches its chain.</summary>
internal static class ChainSettings
{
    /// <summary>The setting that holds the token, where nobody else reads it.</summary>
    public const string TokenVariable = "AIMTRAINER_CHAIN_TOKEN";

    /// <summary>How long the chain may take to answer.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    public static Option<Uri?> Address(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "URL",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            var why = Uri.TryCreate(text, UriKind.Absolute, out var address) ? HttpChainLink.WhyNot(address) : "found no address; allowed: https://SERVER";
            if (why is not null)
            {
                result.AddError($"{name}: {why}");
                return null;
            }

            return address;
        },
    };

    public static Option<string?> TokenFile() => new("--token-file")
    {
        Description = $"A file that holds this center's token, as chain centers add showed it; or the setting {TokenVariable}.",
        HelpName = "FILE",
    };

    /// <summary>The line to the chain.</summary>
    /// <exception cref="UserException">There is no token.</exception>
    public static HttpChainLink Link(Uri address, string? tokenFile)
    {
        var token = tokenFile is null ? Environment.GetEnvironmentVariable(TokenVariable) : ReadFile(tokenFile);
        return string.IsNullOrWhiteSpace(token) || token.Trim().Any(letter => !char.IsAsciiLetterOrDigit(letter) && letter != '-')
            ? throw new UserException($"token: found none; name a file that holds it (--token-file FILE), or set {TokenVariable}")
            : new HttpChainLink(address, token.Trim(), Patience);
    }

    private static string ReadFile(string file)
    {
        using var reader = new StreamReader(UserFiles.OpenRead(file));
        return reader.ReadLine() ?? "";
    }
}
