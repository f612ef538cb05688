using System.CommandLine;
using System.Net;
using AimTrainer.Setup;

namespace AimTrainer.Commands;

/// <summary>Where lines are taken over TCP.</summary>
internal static class LinesOption
{
    private const string Name = "--lines";

    public static Option<IPEndPoint?> Create() => new(Name)
    {
        Description = "Take shots over TCP too, one JSON object a line (docs/feeds.md); a port alone is of this machine only.",
        HelpName = "[ADDRESS:]PORT",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (LinesAddress.Parse(text) is { } address)
            {
                return address;
            }

            result.AddError($"{Name}: found {text}; allowed: {LinesAddress.Allowed}");
            return null;
        },
    };
}
