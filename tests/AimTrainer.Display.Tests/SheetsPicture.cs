using AimTrainer.Calibration;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;
using SixLabors.ImageSharp.Processing.Processors.Quantization;

namespace AimTrainer.Display.Tests;

/// <summary>Pictures of states side by side, each with its name below, in one picture.</summary>
/// <param name="columns">How many stand beside each other.</param>
/// <param name="size">The size of each.</param>
internal sealed class SheetsPicture(int columns, PictureSize size)
{
    private const int Gap = 10, Label = 24;

    private static readonly Colour Ground = new(58, 62, 68);

    private readonly List<Image<Rgba32>> _pictures = [];

    /// <summary>Takes a picture of a state, and writes its name on a strip of its own.</summary>
    /// <param name="name">What is written below it.</param>
    /// <param name="picture">A picture of the size of this sheet's places; this sheet's from here on.</param>
    /// <param name="frames">What the name is drawn with; its surface is as large as a place.</param>
    public void Add(string name, Image<Rgba32> picture, OffscreenFrames frames)
    {
        var (baseline, letters) = (16.0 / size.Height, 11.0 / size.Height);
        using var label = frames.Draw(new Scene<ScreenPoint>(
            Ground, [new Shape<ScreenPoint>.Writing(name, new(0, baseline), letters, TextAlign.Left, new(235, 235, 235))]));
        label.Mutate(each => each.Crop(size.Width, Label));
        var whole = new Image<Rgba32>(size.Width, size.Height + Label);
        whole.Mutate(each => each.DrawImage(picture, new Point(0, 0), 1f).DrawImage(label, new Point(0, size.Height), 1f));
        picture.Dispose();
        _pictures.Add(whole);
    }

    /// <summary>All of them.</summary>
    public Image<Rgba32> Whole()
    {
        var rows = (_pictures.Count + columns - 1) / columns;
        var ground = new Rgba32(Ground.Red, Ground.Green, Ground.Blue);
        var sheet = new Image<Rgba32>((columns * (size.Width + Gap)) + Gap, (rows * (size.Height + Label)) + Gap, ground);
        for (var i = 0; i < _pictures.Count; i++)
        {
            var place = new Point(Gap + (i % columns * (size.Width + Gap)), Gap + (i / columns * (size.Height + Label)));
            sheet.Mutate(each => each.DrawImage(_pictures[i], place, 1f));
            _pictures[i].Dispose();
        }

        return sheet;
    }

    /// <summary>As PNG of at most 256 colours.</summary>
    public static byte[] Png(Image<Rgba32> sheet)
    {
        using var bytes = new MemoryStream();
        sheet.Save(bytes, new PngEncoder
        {
            ColorType = PngColorType.Palette,
            BitDepth = PngBitDepth.Bit8,
            CompressionLevel = PngCompressionLevel.BestCompression,
            FilterMethod = PngFilterMethod.None,
            Quantizer = new WuQuantizer(new QuantizerOptions { Dither = null, MaxColors = 256 }),
        });
        return bytes.ToArray();
    }
}
