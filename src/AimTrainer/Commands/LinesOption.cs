using System.CommandLine;
using System.Globalization;
using System.Net;

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
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port))
            {
                if (port <= IPEndPoint.MaxPort)
                {
                    return new IPEndPoint(IPAddress.Loopback, port);
                }
            }
            else if (text.Contains(':', StringComparison.Ordinal) && IPEndPoint.TryParse(text, out var endPoint))
            {
                return endPoint;
            }

            result.AddError($"{Name}: found {text}; allowed: a port from 0 (any free one) to 65535, or an address and a port as 192.168.1.20:5272");
            return null;
        },
    };
}
