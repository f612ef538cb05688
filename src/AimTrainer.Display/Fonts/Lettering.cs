using System.Text;
using SkiaSharp;

namespace AimTrainer.Display;

/// <summary>
/// The letters of the font that comes with the program (Inter, under the SIL Open Font License: see Fonts/OFL.txt). Whatever the font
/// lacks is a box. Not for several threads at once.
/// </summary>
public sealed class Lettering : IDisposable
{
    private const float Units = 2048;

    private readonly Face _regular = new("Inter-Medium.otf");
    private readonly Face _bold = new("Inter-Bold.otf");

    /// <summary>How wide a line of writing is, in heights of its capital letters.</summary>
    /// <param name="text">The writing, on one line.</param>
    /// <param name="bold">Whether it is bold.</param>
    public double WidthOf(string text, bool bold = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        var width = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            width += GlyphOf(rune, bold).Advance;
        }

        return width;
    }

    /// <summary>Whether the font has a letter; otherwise a box stands for it.</summary>
    /// <param name="rune">The letter.</param>
    /// <param name="bold">In the bold face.</param>
    public bool Has(Rune rune, bool bold = false) => (bold ? _bold : _regular).Has(rune);

    /// <inheritdoc/>
    public void Dispose()
    {
        _regular.Dispose();
        _bold.Dispose();
    }

    internal Glyph GlyphOf(Rune rune, bool bold) => (bold ? _bold : _regular).GlyphOf(rune);

    private sealed class Face : IDisposable
    {
        private readonly SKTypeface _typeface;
        private readonly SKFont _font;
        private readonly double _capital;
        private readonly Dictionary<Rune, Glyph> _glyphs = [];

        public Face(string name)
        {
            using var stream = typeof(Lettering).Assembly.GetManifestResourceStream(name)
                ?? throw new InvalidOperationException($"the font {name} is not in the program");
            using var data = SKData.Create(stream);
            _typeface = SKTypeface.FromData(data) ?? throw new InvalidOperationException($"the font {name} cannot be read");
            _font = new SKFont(_typeface, Units) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
            _capital = _font.Metrics.CapHeight;
        }

        public bool Has(Rune rune) => _font.GetGlyph(rune.Value) != 0;

        public Glyph GlyphOf(Rune rune)
        {
            if (!_glyphs.TryGetValue(rune, out var glyph))
            {
                glyph = Make(rune);
                _glyphs.Add(rune, glyph);
            }

            return glyph;
        }

        public void Dispose()
        {
            _font.Dispose();
            _typeface.Dispose();
        }

        private Glyph Make(Rune rune)
        {
            var id = _font.GetGlyph(rune.Value);
            if (id == 0)
            {
                return Box();
            }

            var advance = _font.GetGlyphWidths([id])[0] / _capital;
            using var path = _font.GetGlyphPath(id);
            return new Glyph(advance, path is null ? [] : Contours(path));
        }

        private List<GlyphPiece[]> Contours(SKPath path)
        {
            var (contours, pieces) = (new List<GlyphPiece[]>(), new List<GlyphPiece>());
            var (start, here) = (default(XY), default(XY));
            void Line(XY to)
            {
                if (to != here)
                {
                    pieces.Add(new GlyphPiece(here, here, to, to, IsLine: true));
                }

                here = to;
            }

            void Curve(XY first, XY second, XY to)
            {
                pieces.Add(new GlyphPiece(here, first, second, to, IsLine: false));
                here = to;
            }

            void Close()
            {
                Line(start);
                if (pieces.Count > 0)
                {
                    contours.Add([.. pieces]);
                    pieces.Clear();
                }
            }

            using var iterator = path.CreateRawIterator();
            var points = new SKPoint[4];
            XY At(int index) => new(points[index].X / _capital, -points[index].Y / _capital);
            for (var verb = iterator.Next(points); verb != SKPathVerb.Done; verb = iterator.Next(points))
            {
                switch (verb)
                {
                    case SKPathVerb.Move:
                        Close();
                        start = here = At(0);
                        break;
                    case SKPathVerb.Line:
                        Line(At(1));
                        break;
                    case SKPathVerb.Quad:
                        Curve(At(0).Towards(At(1), 2.0 / 3), At(2).Towards(At(1), 2.0 / 3), At(2));
                        break;
                    case SKPathVerb.Cubic:
                        Curve(At(1), At(2), At(3));
                        break;
                    case SKPathVerb.Close:
                        Close();
                        break;
                    default:
                        throw new InvalidOperationException($"an outline with {verb}, which fonts do not hold");
                }
            }

            Close();
            return contours;
        }

        private static Glyph Box() => new(0.8, [Rectangle(0.1, 0, 0.7, 1), Rectangle(0.62, 0.08, 0.18, 0.92)]);

        /// <summary>A rectangle; with left and right exchanged it turns the other way, which makes a hole.</summary>
        private static GlyphPiece[] Rectangle(double left, double bottom, double right, double top)
        {
            XY[] corners = [new(left, bottom), new(right, bottom), new(right, top), new(left, top)];
            return [.. corners.Select((corner, i) => new GlyphPiece(corner, corner, corners[(i + 1) % 4], corners[(i + 1) % 4], IsLine: true))];
        }
    }
}
