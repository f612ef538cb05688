using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>How fine and how sure a map is at one distance, at the middle of the lane.</summary>
/// <param name="Distance">The distance.</param>
/// <param name="PixelBoards">What a pixel is across the lane, in boards.</param>
/// <param name="PixelInches">What a pixel is along the lane, in inches.</param>
/// <param name="ErrorPerPixel">
/// How far the map is off here, in pixels (standard error of a coordinate, both edges of the lane together), for each pixel of spread in the marks.
/// </param>
/// <param name="ErrorBoards">The same in boards for the spread that these marks show; null when they leave nothing to judge by.</param>
public sealed record DistanceQuality(Feet Distance, double PixelBoards, double PixelInches, double ErrorPerPixel, double? ErrorBoards);
