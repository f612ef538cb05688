using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Web;

/// <summary>The address by which a phone reaches this host.</summary>
internal static class PhoneAddress
{
    /// <summary>The address that the coach came by, unless a phone could not use it: then the machine's own on the network.</summary>
    public static (string Origin, bool Reachable) Of(HttpRequest request, ConsoleSettings settings)
    {
        var host = request.Host;
        var isLocal = host.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host.Host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
        if (isLocal && settings.OnNetwork && OnNetwork() is { } own)
        {
            host = host.Port is { } port ? new HostString(own.ToString(), port) : new HostString(own.ToString());
            isLocal = false;
        }

        return ($"{request.Scheme}://{host}", settings.OnNetwork && !isLocal);
    }

    private static IPAddress? OnNetwork() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(one => one.OperationalStatus == OperationalStatus.Up && one.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(one => one.GetIPProperties().UnicastAddresses)
        .Select(one => one.Address)
        .FirstOrDefault(address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address));
}
