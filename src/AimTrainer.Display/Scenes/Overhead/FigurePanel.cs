namespace AimTrainer.Display;

/// <summary>One group of figures on the screen: a main figure with a line of small words below it.</summary>
internal sealed record FigurePanel(double Left, double Top, double Right, double Bottom)
{
    public const double Padding = 0.016;

    private const double SmallPitch = 0.064, WordsPitch = 0.0695;

    public double InnerLeft => Left + Padding;

    public double Room => Right - Left - (2 * Padding);

    public double MainBaseline => Top + 0.016 + ScreenInk.Main;

    public void Ground(ScreenInk ink) => ink.Box(Left, Top, Right, Bottom, ink.Palette.Panel);

    /// <summary>The main figure, the first way to say it that fits, after a sign when it has one.</summary>
    public void Main(ScreenInk ink, double indent, Colour colour, params ReadOnlySpan<string> ways) => ink.Write(
        TextFit.First(Room - indent, ScreenInk.Main, true, ways), InnerLeft + indent, MainBaseline, ScreenInk.Main, colour, bold: true);

    /// <summary>Small words below the main figure.</summary>
    public void Below(ScreenInk ink, params ReadOnlySpan<string> ways) =>
        ink.Write(TextFit.First(Room, ScreenInk.Small, false, ways), InnerLeft, MainBaseline + SmallPitch, ScreenInk.Small, ink.Palette.Quiet);

    /// <summary>Words instead of a figure, from the top, as many lines as there is room for.</summary>
    public void Words(ScreenInk ink, string title, params ReadOnlySpan<string> texts)
    {
        var baseline = Top + 0.01 + ScreenInk.Small;
        ink.Write(TextFit.Cut(title, Room, ScreenInk.Small, true), InnerLeft, baseline, ScreenInk.Small, ink.Palette.Text, bold: true);
        foreach (var text in texts)
        {
            foreach (var line in TextFit.Lines(text, Room, ScreenInk.Small, false))
            {
                baseline += WordsPitch;
                if (baseline + (TextRuler.Descent * ScreenInk.Small) > Bottom)
                {
                    return;
                }

                ink.Write(line, InnerLeft, baseline, ScreenInk.Small, ink.Palette.Quiet);
            }
        }
    }
}
