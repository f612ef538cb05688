namespace AimTrainer.Reports;

/// <summary>A chart of a report for a page of its own.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Caption">What it shows, and what it does not; the reason when there is nothing to draw.</param>
/// <param name="Alternative">The same for somebody who does not see it.</param>
/// <param name="Width">In points.</param>
/// <param name="Height">In points.</param>
/// <param name="Svg">An SVG document; null when there is nothing to draw.</param>
public sealed record ReportPicture(string Title, string Caption, string Alternative, int Width, int Height, string? Svg);
