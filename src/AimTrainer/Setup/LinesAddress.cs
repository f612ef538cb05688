using System.Globalization;
using System.Net;

namespace AimTrainer.Setup;

/// <summary>Where lines are taken, in words.</summary>
internal static class LinesAddress
{
    /// <summary>What is allowed.</summary>
    public const string Allowed = "a port from 0 (any free one) to 65535, or an address and a port as 192.168.1.20:5273";

    /// <summary>The address; a port alone is of this machine only. Null when it is none.</summary>
    public static IPEndPoint? Parse(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port) ? port <= IPEndPoint.MaxPort ? new IPEndPoint(IPAddress.Loopback, port) : null
        : text.Contains(':', StringComparison.Ordinal) && IPEndPoint.TryParse(text, out var endPoint) ? endPoint
        : null;
}
