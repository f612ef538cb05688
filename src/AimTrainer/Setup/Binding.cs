using System.Net;
using AimTrainer.Output;
using AimTrainer.Web;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Setup;

/// <summary>Where a host listens, and whether others can reach it there.</summary>
internal static class Binding
{
    /// <summary>The hosts that addresses name.</summary>
    /// <exception cref="UserException">An address is none.</exception>
    public static IReadOnlyList<string> HostsOf(string urls)
    {
        var hosts = new List<string>();
        foreach (var url in Split(urls))
        {
            try
            {
                hosts.Add(BindingAddress.Parse(url).Host.Trim('[', ']'));
            }
            catch (FormatException)
            {
                throw new UserException($"--urls: found {url}; allowed: an address such as {ConsoleHost.UsualUrl}, or several with ; between them");
            }
        }

        return hosts.Count > 0 ? hosts : throw new UserException($"--urls: found nothing; allowed: an address such as {ConsoleHost.UsualUrl}");
    }

    public static string[] Split(string urls) => urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether only this machine reaches a host of this name.</summary>
    public static bool IsLocal(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));

    /// <summary>Beyond this machine nobody listens without a coach's passphrase.</summary>
    /// <exception cref="UserException">There is none.</exception>
    public static void RequirePassphrase(string dataFolder, string option)
    {
        if (!new Passphrase(dataFolder).IsSet)
        {
            throw new UserException(
                $"{option}: others on the network could reach this: set a coach's passphrase first (aimtrainer passphrase{DataPlace.OptionFor(Path.Combine(dataFolder, "record"))}), "
                + "or listen on this machine only (127.0.0.1)");
        }
    }
}
