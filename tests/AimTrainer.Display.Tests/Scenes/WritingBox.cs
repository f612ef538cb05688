namespace AimTrainer.Display.Tests;

/// <summary>The room that one line of writing takes at most.</summary>
internal sealed record WritingBox(string Text, double Left, double Top, double Right, double Bottom)
{
    public static IReadOnlyList<WritingBox> Of(Scene<ScreenPoint> scene) => [.. scene.Shapes.OfType<Shape<ScreenPoint>.Writing>().Select(Of)];

    public static WritingBox Of(Shape<ScreenPoint>.Writing writing)
    {
        var width = TextRuler.Width(writing.Text, writing.Size, writing.Bold);
        var left = writing.Anchor.X - (writing.Align switch { TextAlign.Left => 0, TextAlign.Middle => width / 2, _ => width });
        return new WritingBox(
            writing.Text, left, writing.Anchor.Y - (TextRuler.Above(writing.Text) * writing.Size), left + width, writing.Anchor.Y + (TextRuler.Below(writing.Text) * writing.Size));
    }

    /// <summary>On the lane: left and right in inches as the bowler sees them, top and bottom in feet, negative downlane so that down is nearer.</summary>
    public static WritingBox Of(Shape<Domain.LanePoint>.Writing writing)
    {
        var width = TextRuler.Width(writing.Text, writing.Size, writing.Bold);
        var tall = writing.Size * writing.Stretch / 12;
        var left = -writing.Anchor.Across.Value - (writing.Align switch { TextAlign.Left => 0, TextAlign.Middle => width / 2, _ => width });
        return new WritingBox(
            writing.Text,
            left,
            -writing.Anchor.Down.Value - (TextRuler.Above(writing.Text) * tall),
            left + width,
            -writing.Anchor.Down.Value + (TextRuler.Below(writing.Text) * tall));
    }

    public bool Overlaps(WritingBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public static void AssertApart(IReadOnlyList<WritingBox> boxes)
    {
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = i + 1; j < boxes.Count; j++)
            {
                Assert.False(boxes[i].Overlaps(boxes[j]), $"\"{boxes[i].Text}\" and \"{boxes[j].Text}\" overlap: {boxes[i]} {boxes[j]}");
            }
        }
    }
}
