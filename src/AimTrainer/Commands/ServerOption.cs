using System.CommandLine;

namespace AimTrainer.Commands;

/// <summary>The address of a host.</summary>
internal static class ServerOption
{
    public static Option<Uri?> Create(string description) => new("--server")
    {
        Description = description,
        HelpName = "URL",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (Uri.TryCreate(text, UriKind.Absolute, out var server) && server.Scheme is "http" or "https" && server is { PathAndQuery: "/", Fragment: "", UserInfo: "" })
            {
                return server;
            }

            result.AddError($"--server: found {text}; allowed: the address that the host printed at its start, as http://10.0.0.5:5271");
            return null;
        },
    };
}
