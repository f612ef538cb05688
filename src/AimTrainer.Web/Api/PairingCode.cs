namespace AimTrainer.Web;

/// <summary>A code by which one phone can be paired.</summary>
/// <param name="Code">Six digits.</param>
/// <param name="Station">The station.</param>
/// <param name="Until">When it stops working; it works once.</param>
/// <param name="Address">The address that the picture holds.</param>
/// <param name="Reachable">Whether a phone can reach that address; false while the host listens on this machine only.</param>
/// <param name="QrSvg">The address as a QR code, an SVG picture.</param>
public sealed record PairingCode(string Code, int Station, DateTimeOffset Until, string Address, bool Reachable, string QrSvg);
