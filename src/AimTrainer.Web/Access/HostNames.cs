using System.Net;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>
/// The names that this host answers to. A page from elsewhere can make its own name point at this machine and then read what it
/// answers (DNS rebinding); so only names that this host was told of are its own, and addresses in digits, which no name can stand in for.
/// </summary>
internal sealed class HostNames(ConsoleSettings settings)
{
    /// <summary>Whether a request's Host header names this host.</summary>
    public bool Are(HostString host)
    {
        var name = host.Host.TrimEnd('.');
        if (IPAddress.TryParse(name.Trim('[', ']'), out var address))
        {
            return settings.OnNetwork || IPAddress.IsLoopback(address);
        }

        return name.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            || (settings.OnNetwork && settings.HostNames.Contains(name, StringComparer.OrdinalIgnoreCase));
    }
}
