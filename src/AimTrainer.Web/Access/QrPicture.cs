using QRCoder;

namespace AimTrainer.Web;

/// <summary>An address as a QR code (ISO/IEC 18004), drawn as SVG: black on white in a dark room too, since cameras want it so.</summary>
internal static class QrPicture
{
    private const int Module = 4;

    public static string Svg(string address)
    {
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        using var picture = new SvgQRCode(data);
        return picture.GetGraphic(Module, "#000000", "#ffffff", drawQuietZones: true, SvgQRCode.SizingMode.ViewBoxAttribute);
    }
}
