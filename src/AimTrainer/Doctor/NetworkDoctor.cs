using System.Net;
using System.Net.Sockets;
using AimTrainer.Output;
using AimTrainer.Setup;
using AimTrainer.Web;
using Microsoft.AspNetCore.Http;

namespace AimTrainer.Doctor;

/// <summary>Looks at the settings of a host, and whether it can listen where they say.</summary>
/// <param name="place">The data folder.</param>
/// <param name="isHeld">Whether a host runs on it now, which then holds the addresses.</param>
internal sealed class NetworkDoctor(string place, bool isHeld)
{
    public IReadOnlyList<DoctorLine> Look(Func<string, string?> variable)
    {
        ConsoleOptions options;
        try
        {
            var file = Path.Combine(place, ServeSettings.FileName);
            (options, _) = ServeSettings.Of([ServeSettings.OfEnvironment(variable), .. File.Exists(file) ? [ServeSettings.OfFile(file)] : Array.Empty<ServeChoice>()]);
            Binding.HostsOf(options.Urls);
        }
        catch (UserException exception)
        {
            return [DoctorLine.Fail("settings", exception.Message, "correct them, then look with: aimtrainer serve --check")];
        }

        var lines = new List<DoctorLine> { DoctorLine.Ok("settings", $"{Words.Count(options.Stations, "station")} at {options.Urls}") };
        lines.Add(Passphrase(options));
        lines.AddRange(Binding.Split(options.Urls).Select(url => Port("port", url, EndPointOf(url))));
        if (options.Lines is { } address)
        {
            lines.Add(Port("port of lines", address.ToString(), address));
        }

        return lines;
    }

    private DoctorLine Passphrase(ConsoleOptions options)
    {
        var onNetwork = !Binding.HostsOf(options.Urls).All(Binding.IsLocal) || (options.Lines is { } lines && !IPAddress.IsLoopback(lines.Address));
        try
        {
            return new Passphrase(place).IsSet ? DoctorLine.Ok("passphrase", "set")
                : onNetwork ? DoctorLine.Fail("passphrase", "none, and the host is to listen beyond this machine", "set one: aimtrainer passphrase")
                : DoctorLine.Ok("passphrase", "none; the host listens on this machine only");
        }
        catch (InvalidDataException exception)
        {
            return DoctorLine.Fail("passphrase", exception.Message, "set it anew: aimtrainer passphrase");
        }
    }

    private static IPEndPoint? EndPointOf(string url)
    {
        var address = BindingAddress.Parse(url);
        return address.Host is "localhost" ? new IPEndPoint(IPAddress.Loopback, address.Port)
            : IPAddress.TryParse(address.Host.Trim('[', ']'), out var ip) ? new IPEndPoint(ip, address.Port)
            : new IPEndPoint(IPAddress.Any, address.Port);
    }

    private DoctorLine Port(string name, string words, IPEndPoint? endPoint)
    {
        try
        {
            using var listener = new TcpListener(endPoint!);
            listener.Start();
            return DoctorLine.Ok(name, $"{words} is free");
        }
        catch (SocketException exception)
        {
            return exception.SocketErrorCode == SocketError.AddressAlreadyInUse && isHeld ? DoctorLine.Ok(name, $"{words} is taken, as it should be while the host runs")
                : exception.SocketErrorCode == SocketError.AddressAlreadyInUse ? DoctorLine.Fail(name, $"{words} is taken by another program", "end that one, or name another port (urls, lines)")
                : DoctorLine.Fail(name, $"{words}: {exception.Message.TrimEnd('.')}", "name an address of this machine, and a port above 1023");
        }
    }
}
